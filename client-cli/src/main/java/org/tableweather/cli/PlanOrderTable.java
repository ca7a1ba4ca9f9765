package org.tableweather.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.plan.ClimateStep;
import org.tableweather.analyzers.standard.plan.ClimateStep.TimeConstant;

/** The run order as a table, and how long to wait between its climates. */
final class PlanOrderTable {

    private PlanOrderTable() {}

    /** One row a session; times and waits only where they are known. */
    static String of(List<PlanReport.Held> sessions, PlanReport.SettlingTime settling) {
        boolean known = settling.cloth().isPresent();
        boolean dated = settling.datesStated();
        List<String> head = new ArrayList<>(List.of("session", "visit", "day", "%RH", "step %RH", "water g/m³"));
        if (known) {
            head.add("cloth h");
        }
        if (dated) {
            head.addAll(List.of("hold from", "first attempt"));
        }
        TextTable table = TextTable.of(head.toArray(String[]::new));
        for (PlanReport.Held held : sessions) {
            table.row(row(held, known, dated).toArray(String[]::new));
        }
        return table.text();
    }

    private static List<String> row(PlanReport.Held held, boolean known, boolean dated) {
        List<String> row = new ArrayList<>(List.of(
                Integer.toString(held.session().number()),
                Integer.toString(held.session().visit()),
                Long.toString(held.day()),
                Figures.plain(held.session().rhPct()),
                held.step()
                        .map(step -> signed(step.toRhPct() - step.fromRhPct(), "%+.0f"))
                        .orElse(""),
                held.step().map(step -> signed(step.waterGPerM3(), "%+.1f")).orElse("")));
        if (known) {
            row.add(held.step()
                    .flatMap(ClimateStep::settling)
                    .map(lag -> needs(lag) + (held.isShort() ? " (!)" : ""))
                    .orElse(""));
        }
        if (dated) {
            row.add(PlanText.WHEN.format(held.settledFrom()));
            row.add(PlanText.WHEN.format(held.startedAt()));
        }
        return row;
    }

    private static String signed(double figure, String format) {
        return figure == 0 ? "0" : String.format(Locale.ROOT, format, figure);
    }

    private static String needs(ClimateStep.Lag lag) {
        return String.format(Locale.ROOT, lag.errorHours() > 0 ? "%.1f ± %.1f" : "%.1f", lag.hours(), lag.errorHours());
    }

    /** How long the plan waits, and whether that is enough. */
    static String settling(PlanReport report) {
        PlanReport.SettlingTime settling = report.settling();
        String held = "Water: what a cubic metre of air takes up, or gives off. Each climate is held "
                + Figures.plain(settling.hours()) + " h before the first attempt. ";
        if (settling.cloth().isEmpty()) {
            return held + "How fast cloth and cushions follow is not known beforehand: measure it (tableweather analyze"
                    + " settling; then --time-constant-hours), hold as long as you can, and never less than 2 h (common"
                    + " practice, no source).\n";
        }
        return held + lag(settling.cloth().get(), settling) + tooShort(report);
    }

    private static String lag(TimeConstant cloth, PlanReport.SettlingTime settling) {
        return String.format(
                Locale.ROOT,
                "By then a cloth with a time constant of %s h has made %.0f %% of a step; it needs what the table says until"
                        + " %s %%RH of the step is left. That takes the lag as first-order; real wool may lag longer.%n",
                cloth.errorHours() > 0
                        ? Figures.plain(cloth.hours()) + " ± " + Figures.plain(cloth.errorHours())
                        : Figures.plain(cloth.hours()),
                100 * settling.shareDone().orElseThrow(),
                Figures.plain(ClimateStep.LEFT_PCT));
    }

    private static String tooShort(PlanReport report) {
        double most = report.sessions().stream()
                .filter(PlanReport.Held::isShort)
                .flatMap(session -> session.step().stream())
                .flatMap(step -> step.settling().stream())
                .mapToDouble(ClimateStep.Lag::atMostHours)
                .max()
                .orElse(0);
        return most == 0
                ? ""
                : String.format(
                        Locale.ROOT,
                        "WARNING: sessions marked (!) start before the cloth has settled: --settle-hours %.0f would do.%n",
                        Math.ceil(most));
    }
}
