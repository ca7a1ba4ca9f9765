package org.tableweather.cli;

import java.util.Locale;
import org.tableweather.analyzers.standard.climate.LoggerComparison;

/** A comparison of two loggers, for people. */
final class LoggerComparisonText {
    private LoggerComparisonText() {}

    static String of(ClimateCompareCommand.Outcome outcome) {
        LoggerComparison comparison = outcome.comparison();
        TextTable table = TextTable.of("second less first", "mean", "spread (s)", "least", "greatest", "unit");
        row(table, "temperature", comparison.tempK(), "K");
        row(table, "relative humidity as read", comparison.rhPct(), "%RH");
        row(table, "the same at the first one's temperature", comparison.sameAirRhPct(), "%RH");
        return String.format(
                        Locale.ROOT,
                        "%s (first) and %s (second): %,d common times%n",
                        outcome.first(),
                        outcome.second(),
                        comparison.pairs())
                + table.text() + inWords(comparison) + "\n";
    }

    private static void row(TextTable table, String what, LoggerComparison.Difference difference, String unit) {
        table.row(
                what,
                figure(difference.mean()),
                figure(difference.standardDeviation()),
                figure(difference.least()),
                figure(difference.greatest()),
                unit);
    }

    private static String figure(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    private static String inWords(LoggerComparison comparison) {
        String air = comparison.differInTemperature()
                ? "Their temperatures differ by more than loggers in one room were seen to (" + LoggerComparison.NEAR_K
                        + " K): they may not be in the same air. "
                : "";
        return air
                + switch (comparison.agreement()) {
                    case NEAR ->
                        "They agree better than uncalibrated loggers were seen to in one room (4 to 15 %RH apart; Morgner2017).";
                    case UNCALIBRATED ->
                        "They are as far apart as uncalibrated loggers were seen in one room (4 to 15 %RH; Morgner2017):"
                                + " calibrate both over saturated salts, and note it under calibrations.";
                    case FAULTY ->
                        "They are farther apart than loggers of one room were seen (15 %RH; Morgner2017): one is at fault,"
                                + " or they are not in the same air. Use neither before both are calibrated.";
                };
    }
}
