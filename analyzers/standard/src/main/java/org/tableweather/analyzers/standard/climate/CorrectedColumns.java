package org.tableweather.analyzers.standard.climate;

import org.tableweather.analyzers.spi.TrialColumns;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;

/** Trials as they are, their climates corrected. */
final class CorrectedColumns implements TrialColumns {
    private final TrialColumns read;
    private final double[] tempC;
    private final double[] rhPct;

    CorrectedColumns(TrialColumns read, CorrectedClimate correction) {
        this.read = read;
        tempC = new double[read.size()];
        rhPct = new double[read.size()];
        double[] readC = read.numbers(TrialNumber.CLIMATE_TEMP_C);
        double[] readPct = read.numbers(TrialNumber.CLIMATE_RH_PCT);
        for (int row = 0; row < tempC.length; row++) {
            Climate corrected = correction.of(new Climate(readC[row], readPct[row], ClimateSource.NONE));
            tempC[row] = corrected.tempC();
            rhPct[row] = corrected.rhPct();
        }
    }

    @Override
    public int size() {
        return read.size();
    }

    @Override
    public double[] numbers(TrialNumber number) {
        return switch (number) {
            case CLIMATE_TEMP_C -> tempC;
            case CLIMATE_RH_PCT -> rhPct;
            default -> read.numbers(number);
        };
    }

    @Override
    public String trial(int row) {
        return read.trial(row);
    }

    @Override
    public String shot(int row) {
        return read.shot(row);
    }

    @Override
    public Kind kind(int row) {
        return read.kind(row);
    }

    @Override
    public Made made(int row) {
        return read.made(row);
    }
}
