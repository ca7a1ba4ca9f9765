package org.tableweather.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.plan.ClimateStep;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.table.KindOutcomes;
import org.tableweather.schema.table.TrialColumn;

/** A plan as a sheet to print: one page or more for each session, with a line for every attempt. */
final class PlanSheet {
    private static final int MOST_ATTEMPTS = 20_000;
    /** As many as there is room to write in. */
    private static final int MOST_OUTCOMES = 4;

    private PlanSheet() {}

    /** The whole page, with nothing outside it. */
    static String of(PlanReport report, List<Shot> shots, String room) {
        long attempts = (long) report.sessions().size() * report.plan().attemptsPerSession();
        if (attempts > MOST_ATTEMPTS) {
            throw Failure.usage(
                    "a sheet of " + attempts + " attempts would be some " + attempts / 30 + " pages",
                    "plan at most " + MOST_ATTEMPTS + " attempts a room, or print no sheet");
        }
        return template()
                .replace("{room}", escaped(room))
                .replace("{summary}", escaped(PlanText.of(report)))
                .replace("{shots}", shots.stream().map(PlanSheet::shot).collect(Collectors.joining("\n")))
                .replace(
                        "{sessions}",
                        report.sessions().stream()
                                .map(held -> session(held, report.settling(), outcomes(shots)))
                                .collect(Collectors.joining("\n")));
    }

    private static String shot(Shot shot) {
        String keep = shot.keepConstant().stream()
                .map(what -> "<li>" + escaped(what) + "</li>")
                .collect(Collectors.joining());
        return "<section><h3>" + escaped(shot.id()) + ": "
                + escaped(shot.title().orElse("")) + "</h3>\n<p>"
                + escaped(shot.howToLog().orElse("Write down every attempt, made or missed.")) + "</p>\n<ul>" + keep
                + "</ul></section>";
    }

    /** What is written down of these shots' attempts: columns of trials.csv, without those that contacts.csv gives. */
    private static List<TrialColumn> outcomes(List<Shot> shots) {
        return shots.stream()
                .flatMap(shot -> KindOutcomes.of(shot.kind()).needsOneOf().stream())
                .distinct()
                .limit(MOST_OUTCOMES)
                .toList();
    }

    private static String session(PlanReport.Held held, PlanReport.SettlingTime settling, List<TrialColumn> outcomes) {
        return String.format(
                Locale.ROOT,
                """
                <section class="session">
                <h2>Session s%d <small>visit %d, day %d</small></h2>
                <p class="climate">Hold <strong>%s %%RH</strong> %s</p>
                <table class="air"><tr><th>date, shooter</th><td></td><th>held from</th><td></td><th>first attempt</th><td></td></tr>
                <tr><th>°C, start</th><td></td><th>%%RH, start</th><td></td><th>bed °C</th><td></td></tr>
                <tr><th>°C, end</th><td></td><th>%%RH, end</th><td></td><th>warm-up attempts</th><td></td></tr></table>
                <table class="attempts"><thead><tr><th>no.</th><th>shot</th>%s<th>note</th></tr></thead><tbody>
                %s</tbody></table>
                </section>""",
                held.session().number(),
                held.session().visit(),
                held.day(),
                Figures.plain(held.session().rhPct()),
                when(held, settling),
                outcomes.stream()
                        .map(column -> "<th>" + column.header().replace("_", "_<wbr>") + "</th>")
                        .collect(Collectors.joining()),
                attempts(held.session().shots(), outcomes.size()));
    }

    /** Dates where they are the user's; else how long to wait. */
    private static String when(PlanReport.Held held, PlanReport.SettlingTime settling) {
        String needed = held.step()
                .flatMap(ClimateStep::settling)
                .filter(lag -> held.isShort())
                .map(lag ->
                        String.format(Locale.ROOT, " The cloth needs up to %.1f h: wait longer.", lag.atMostHours()))
                .orElse("");
        return settling.datesStated()
                ? "from " + PlanText.WHEN.format(held.settledFrom()) + "; first attempt not before "
                        + PlanText.WHEN.format(held.startedAt()) + "." + needed
                : "for at least " + Figures.plain(settling.hours()) + " h before the first attempt." + needed;
    }

    private static String attempts(List<String> shots, int outcomes) {
        String blank = "<td></td>".repeat(outcomes + 1);
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < shots.size(); i++) {
            rows.append("<tr><td>")
                    .append(i + 1)
                    .append("</td><td>")
                    .append(escaped(shots.get(i)))
                    .append("</td>")
                    .append(blank)
                    .append("</tr>\n");
        }
        return rows.toString();
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    private static String template() {
        try (InputStream template = PlanSheet.class.getResourceAsStream("plan-sheet.html")) {
            return new String(template.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("the program's own file cannot be read", e);
        }
    }
}
