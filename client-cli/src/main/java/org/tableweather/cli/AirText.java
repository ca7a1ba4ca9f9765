package org.tableweather.cli;

import java.util.Locale;
import org.tableweather.schema.caution.Caution;

/** What follows from a reading of the air, for people. */
final class AirText {
    private AirText() {}

    static String of(ClimateAirCommand.Report report) {
        TextTable table = TextTable.of("quantity", "value", "unit", "std. uncertainty", "source");
        for (AirFigures.Figure figure : report.values()) {
            table.row(
                    figure.name(),
                    figure.value().isPresent()
                            ? number(figure.value().getAsDouble())
                            : figure.words().orElse("-"),
                    figure.unit(),
                    figure.standardUncertainty().isPresent()
                            ? number(figure.standardUncertainty().getAsDouble())
                            : "-",
                    figure.reference());
        }
        StringBuilder text = new StringBuilder(table.text());
        report.values().stream()
                .filter(figure -> figure.value().isPresent() && figure.words().isPresent())
                .forEach(figure -> text.append(figure.name())
                        .append(": ")
                        .append(figure.words().get())
                        .append('\n'));
        text.append("Formulas: ")
                .append(report.formulas())
                .append("; pressure ")
                .append(String.format(Locale.ROOT, "%.0f Pa%n", report.pressurePa()));
        for (Caution caution : report.cautions()) {
            text.append(String.format(
                    "%s %s: %s (%s)%n",
                    caution.level().name().toLowerCase(Locale.ROOT),
                    caution.id(),
                    caution.advice(),
                    caution.reference()));
        }
        return text.toString();
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, Math.abs(value) < 100 ? "%.2f" : "%.0f", value);
    }
}
