package org.tableweather.cli;

import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.plan.PlanChance;
import org.tableweather.analyzers.standard.plan.PlanSimulation;
import org.tableweather.analyzers.standard.plan.StudyPlan;
import org.tableweather.analyzers.standard.statistics.power.RoomClaim;
import org.tableweather.analyzers.standard.statistics.power.ScatterAssumption;

/** A plan as a person reads it. */
final class PlanText {
    static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);
    private static final int MOST_SESSIONS = 40;

    private PlanText() {}

    static String of(PlanReport report) {
        return String.join("\n", List.of(what(report), chances(report), order(report), minding(report)));
    }

    private static String what(PlanReport report) {
        return String.format(
                Locale.ROOT,
                "Plan: %s; %s; %s of each shot in each climate; %s; %s.%n"
                        + "That is %s in each room, %,d attempts in all.%n",
                list(report.plan().rhPct()) + " %RH at "
                        + Figures.plain(report.plan().tempC()) + " °C",
                String.join(", ", report.plan().shots()),
                counted(report.plan().attempts(), "attempt"),
                counted(report.plan().visits(), "visit"),
                counted(report.plan().rooms(), "room"),
                counted(report.plan().sessionsPerRoom(), "session"),
                (long) report.plan().rooms()
                        * report.plan().sessionsPerRoom()
                        * report.plan().attemptsPerSession());
    }

    private static String list(List<Double> climates) {
        return climates.stream().map(Figures::plain).collect(Collectors.joining(", "));
    }

    private static String counted(int count, String noun) {
        return String.format(Locale.ROOT, "%,d %s%s", count, noun, count == 1 ? "" : "s");
    }

    private static String chances(PlanReport report) {
        PlanReport.Wanted wanted = report.wanted();
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "Chance to find a change of %s %s from the driest climate to the dampest, one shot at a time:%n",
                Figures.plain(wanted.change()),
                wanted.unit()));
        if (report.chances().isEmpty()) {
            text.append(
                    "  none: so few sessions leave nothing to judge their scatter by. Plan more visits or climates.\n");
        }
        for (int i = 0; i < report.chances().size(); i++) {
            text.append(
                    chance(report, report.chances().get(i), report.simulated().get(i)));
        }
        if (report.plan().rooms() == 1) {
            text.append("  One room says nothing of other rooms, however often it is measured.\n");
        }
        return text.append(scatter(wanted)).toString();
    }

    private static String chance(PlanReport report, PlanChance chance, PlanSimulation counted) {
        PlanReport.Wanted wanted = report.wanted();
        String rooms = chance.claim() == RoomClaim.ANY_ROOM
                ? "for rooms in general"
                : "for these rooms alone, their slopes taken as alike";
        return String.format(
                Locale.ROOT,
                "  %s: %s (simulated: %s); standard error %s %s on %,d degrees of freedom%n"
                        + "    found with %.0f %%: a change of %s %s; for %s that takes %s%n",
                rooms,
                percent(chance.chance()),
                simulated(counted),
                Figures.significant(chance.standardError(), 2),
                wanted.unit(),
                chance.df(),
                100 * wanted.power(),
                Figures.significant(chance.detectableChange(), 3),
                wanted.unit(),
                Figures.plain(wanted.change()) + " " + wanted.unit(),
                needed(report.plan(), chance));
    }

    private static String percent(double chance) {
        if (chance > 0.999) {
            return "over 99.9 %";
        }
        return String.format(Locale.ROOT, chance > 0.99 ? "%.1f %%" : "%.0f %%", 100 * chance);
    }

    /** With twice its Monte-Carlo standard error, which is nothing where every study found the change. */
    private static String simulated(PlanSimulation counted) {
        return percent(counted.chance())
                + (counted.standardError() > 0
                        ? String.format(Locale.ROOT, " ± %.1f", 200 * counted.standardError())
                        : "");
    }

    private static String needed(StudyPlan plan, PlanChance chance) {
        String visits = chance.visitsNeeded().isEmpty()
                ? ""
                : counted(chance.visitsNeeded().getAsInt(), "visit") + " ("
                        + sessions(chance.visitsNeeded().getAsInt(), plan.rooms(), plan) + ") with as many rooms";
        String rooms = chance.roomsNeeded().isEmpty()
                ? ""
                : counted(chance.roomsNeeded().getAsInt(), "room") + " ("
                        + sessions(plan.visits(), chance.roomsNeeded().getAsInt(), plan) + ") with as many visits";
        if (visits.isEmpty() && rooms.isEmpty()) {
            return "more than 100 visits or 10,000 rooms";
        }
        if (visits.isEmpty()) {
            return rooms + " (no number of visits up to 100 will do)";
        }
        return rooms.isEmpty() ? visits : visits + ", or " + rooms;
    }

    private static String sessions(int visits, int rooms, StudyPlan plan) {
        return String.format(
                Locale.ROOT,
                "%,d sessions in all",
                (long) visits * rooms * plan.rhPct().size());
    }

    private static String scatter(PlanReport.Wanted wanted) {
        ScatterAssumption scatter = wanted.scatter();
        return String.format(
                Locale.ROOT,
                "  These rest on scatter %s, in %s: attempts %s, sessions %s, rooms' slopes %s per 10 %%RH; on a straight"
                        + " line over humidity; and on a two-sided test at 5 %%. More attempts in a climate do not stand in for more"
                        + " sessions: all attempts of a session share its climate, and whatever else was particular that day.%n",
                wanted.scatterFrom(),
                wanted.unit(),
                deviation(scatter.trialSd()),
                deviation(scatter.sessionSd()),
                deviation(scatter.roomSlopeSd()));
    }

    /** To four digits: more are not known of an estimate, and few state more. */
    private static String deviation(double sd) {
        return Figures.plain(Double.parseDouble(Figures.significant(sd, 4)));
    }

    private static String order(PlanReport report) {
        List<PlanReport.Held> shown =
                report.sessions().stream().limit(MOST_SESSIONS).toList();
        int more = report.sessions().size() - shown.size();
        return String.format(
                        Locale.ROOT,
                        "Run order of room %d, drawn by lot with seed %d (--seed draws it again; --sheet and --folder hold"
                                + " every attempt):%n",
                        report.room(),
                        report.seed())
                + PlanOrderTable.of(shown, report.settling())
                + (more > 0 ? "and " + counted(more, "more session") + "\n" : "")
                + PlanOrderTable.settling(report);
    }

    private static String minding(PlanReport report) {
        Map<String, String> lines = new LinkedHashMap<>();
        List<PlanReport.HeldCaution> gravestFirst = report.cautions().stream()
                .sorted(Comparator.comparing((PlanReport.HeldCaution found) ->
                                found.caution().level())
                        .reversed())
                .toList();
        for (PlanReport.HeldCaution found : gravestFirst) {
            String climate = Figures.plain(found.rhPct()) + " %RH";
            lines.merge(
                    found.caution().level().name().toLowerCase(Locale.ROOT)
                            + ": " + found.caution().advice() + " (source: "
                            + found.caution().reference() + ")",
                    climate,
                    (a, b) -> a + ", " + b);
        }
        StringBuilder text = new StringBuilder("To mind:\n");
        lines.forEach((line, climates) ->
                text.append("  at ").append(climates).append(", ").append(line).append('\n'));
        return text.append(
                        "  Never leave a heater or humidifier unattended or on a circuit that is not rated for it; keep people out"
                                + " of the line of a ball that may leave the table. Local codes and licensed practice come first.\n")
                .toString();
    }
}
