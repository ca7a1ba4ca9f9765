package org.tableweather.release;

import java.time.Instant;
import java.util.Optional;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.OutcomeUncertainty;
import org.tableweather.schema.record.Trial;

/** A trial while it is put together from what was stored. */
final class TrialParts {
    private static final int CLIMATE = 18;
    private static final int UNCERTAINTY = 20;

    String session = "";
    String trial = "";
    Optional<Instant> startedAt = Optional.empty();
    Kind kind = Kind.REBOUND;
    String shot = "";
    String ball = "";
    Made made = Made.NOT_STATED;
    int rails = -1;
    int ballsMade = -1;
    String note = "";
    ClimateSource source = ClimateSource.NONE;

    /** In the order of {@link TrialNumber}. */
    final double[] numbers = new double[TrialNumber.values().length];

    Trial whole() {
        double[] n = numbers;
        int i = 0;
        return new Trial(
                session,
                trial,
                startedAt,
                kind,
                shot,
                ball,
                n[i++],
                n[i++],
                n[i++],
                n[i++],
                n[i++],
                n[i++],
                n[i++],
                n[i++],
                n[i++],
                n[i++],
                n[i++],
                made,
                rails,
                n[i++],
                n[i++],
                n[i++],
                n[i++],
                n[i++],
                ballsMade,
                n[i++],
                n[i],
                note,
                climate(),
                uncertainty());
    }

    private Climate climate() {
        double tempC = numbers[CLIMATE];
        double rhPct = numbers[CLIMATE + 1];
        return source == ClimateSource.NONE && Double.isNaN(tempC) && Double.isNaN(rhPct)
                ? Climate.NONE
                : new Climate(tempC, rhPct, source);
    }

    private OutcomeUncertainty uncertainty() {
        for (int i = UNCERTAINTY; i < numbers.length; i++) {
            if (!Double.isNaN(numbers[i])) {
                return stated();
            }
        }
        return OutcomeUncertainty.NONE;
    }

    private OutcomeUncertainty stated() {
        double[] n = numbers;
        int i = UNCERTAINTY;
        return new OutcomeUncertainty(
                n[i++], n[i++], n[i++], n[i++], n[i++], n[i++], n[i++], n[i++], n[i++], n[i++], n[i++], n[i++], n[i]);
    }
}
