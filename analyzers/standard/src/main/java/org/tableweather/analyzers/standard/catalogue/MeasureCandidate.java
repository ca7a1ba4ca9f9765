package org.tableweather.analyzers.standard.catalogue;

import java.util.Optional;

/** What may explain a response, each alone and in a straight line, in steps that are about as large as 10 %RH. */
enum MeasureCandidate {
    RELATIVE(HumidityMeasure.RELATIVE),
    ABSOLUTE(HumidityMeasure.ABSOLUTE),
    DEW_POINT(HumidityMeasure.DEW_POINT),
    CLOTH_REGAIN(HumidityMeasure.CLOTH_REGAIN),
    TEMPERATURE("temperature", "air temperature", "per 5 K"),
    NOTHING("nothing", "no climate at all", "");

    /** Of the air or the cloth; empty for temperature and for nothing. */
    final Optional<HumidityMeasure> humidity;

    final String name;
    final String noun;
    final String per;

    MeasureCandidate(HumidityMeasure humidity) {
        this.humidity = Optional.of(humidity);
        this.name = humidity.parameter;
        this.noun = humidity.noun;
        this.per = humidity.per();
    }

    MeasureCandidate(String name, String noun, String per) {
        this.humidity = Optional.empty();
        this.name = name;
        this.noun = noun;
        this.per = per;
    }

    /** The measure whose columns are taken. */
    HumidityMeasure columns() {
        return humidity.orElse(HumidityMeasure.RELATIVE);
    }

    /** Its covariates and the response among {@code x, x², t, y}. */
    int[] selected() {
        return switch (this) {
            case TEMPERATURE -> new int[] {2, 3};
            case NOTHING -> new int[] {3};
            default -> new int[] {0, 3};
        };
    }
}
