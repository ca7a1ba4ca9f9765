package org.tableweather.cli;

import java.util.Locale;

/** A comparison as a person reads it. */
final class RoomComparisonText {
    private RoomComparisonText() {}

    static String of(RoomComparison one) {
        StringBuilder text = new StringBuilder();
        if (one.invented()) {
            text.append("INVENTED DATA: made up to show the program, not measured\n");
        }
        text.append(String.format(
                Locale.ROOT,
                "room %s: %,d sessions, %,d attempts; beside a pool of %,d rooms%n%n",
                one.room(),
                one.sessions(),
                one.trials(),
                one.rooms()));
        TextTable table = TextTable.of(
                "effect", "average room", "this room", "difference", "lower 95 %", "upper 95 %", "place", "unit");
        for (RoomComparison.Departure departure : one.departures()) {
            table.row(
                    departure.name(),
                    AnalysisText.number(departure.average()),
                    AnalysisText.number(departure.here()),
                    String.format(Locale.ROOT, "%+.4f", departure.value()),
                    AnalysisText.number(departure.lower()),
                    AnalysisText.number(departure.upper()),
                    departure.place() + " of " + one.rooms(),
                    departure.unit());
        }
        return text.append(table.text())
                .append('\n')
                .append(one.sentence())
                .append('\n')
                .append("The differences are shrunken towards the average room; place 1 is the largest.\n")
                .toString();
    }
}
