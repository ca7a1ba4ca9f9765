package org.tableweather.server.contribution;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.host.ChartSize;
import org.tableweather.analyzers.host.ChartUnavailable;
import org.tableweather.analyzers.host.PlotChart;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.schema.folder.SessionTraces;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Trial;
import org.tableweather.server.catalogue.PublishedSession;
import org.tableweather.server.web.Address;
import org.tableweather.server.web.Words;

/**
 * A session as a page shows it, every figure in words.
 *
 * @param id its number here
 * @param name its id in the room
 * @param room name of its room
 * @param roomAddress path of the room's page
 * @param contribution number of its contribution
 * @param invented whether it is made up
 * @param sentence what it is, in one sentence
 * @param facts how it was shot
 * @param equipment what it was shot with
 * @param climate its plots of the climate
 * @param outcomes its plots of the attempts
 * @param hasLog whether a log covers it
 * @param drawings tables with paths
 * @param complete whether every marked path is drawn
 * @param findings of the checks
 * @param read whether its attempts were read
 */
record SessionPageView(
        int id,
        String name,
        String room,
        String roomAddress,
        long contribution,
        boolean invented,
        String sentence,
        List<EquipmentWords.Fact> facts,
        List<EquipmentWords.Fact> equipment,
        List<Figure> climate,
        List<Figure> outcomes,
        boolean hasLog,
        List<SessionDrawing> drawings,
        boolean complete,
        List<ReportView.Line> findings,
        boolean read) {

    SessionPageView {
        facts = List.copyOf(facts);
        equipment = List.copyOf(equipment);
        climate = List.copyOf(climate);
        outcomes = List.copyOf(outcomes);
        drawings = List.copyOf(drawings);
        findings = List.copyOf(findings);
    }

    /**
     * A plot.
     *
     * @param id of it
     * @param title in words
     * @param wide SVG for a page; empty when this machine has no fonts
     * @param narrow SVG for a phone
     */
    record Figure(String id, String title, String wide, String narrow) {}

    static SessionPageView of(SessionDossier dossier) {
        PublishedSession session = dossier.whole().session();
        var entry = dossier.whole().entry();
        List<Plot> plots = SessionPlots.of(dossier);
        return new SessionPageView(
                session.id(),
                entry.session().id(),
                entry.room().name().orElse(session.roomKey()),
                Address.of("/rooms/", session.roomKey()),
                dossier.whole().contribution(),
                session.invented(),
                sentence(dossier),
                facts(entry.session()),
                EquipmentWords.of(entry),
                figures(plots, session, false),
                figures(plots, session, true),
                dossier.traces().map(traces -> !traces.log().isEmpty()).orElse(false),
                SessionDrawing.all(dossier),
                dossier.traces().map(SessionTraces::complete).orElse(true),
                dossier.findings(),
                session.trials() <= SessionDossiers.MOST_TRIALS);
    }

    private static String sentence(SessionDossier dossier) {
        List<Trial> trials = dossier.whole().trials();
        String count = Words.counted(dossier.whole().session().trials(), "attempt");
        String temp = range(trials, Climate::tempC, 1);
        String rh = range(trials, Climate::rhPct, 0);
        return count + (temp.isEmpty() ? "" : " at " + temp + " °C")
                + (rh.isEmpty() ? "" : " and " + rh + " % relative humidity") + ".";
    }

    private static String range(List<Trial> trials, ToDoubleFunction<Climate> value, int decimals) {
        DoubleSummaryStatistics known = trials.stream()
                .map(Trial::climate)
                .mapToDouble(value)
                .filter(Double::isFinite)
                .summaryStatistics();
        return known.getCount() == 0
                ? ""
                : Words.range(Optional.of(known.getMin()), Optional.of(known.getMax()), decimals);
    }

    private static List<EquipmentWords.Fact> facts(Session session) {
        List<EquipmentWords.Fact> facts = new ArrayList<>();
        add(facts, "Began", session.startedAt().map(SessionPageView::time));
        add(facts, "Climate held since", session.settledFrom().map(SessionPageView::time));
        add(facts, "Visit", session.visit());
        add(facts, "Shooter", session.shooter());
        add(facts, "Delivered by", session.delivery());
        add(
                facts,
                "Order of the shots",
                session.orderRandomised().map(drawn -> drawn ? "drawn by lot" : "not drawn by lot"));
        add(
                facts,
                "Attempts written down",
                session.everyAttemptLogged().map(every -> every ? "every one" : "not every one"));
        add(
                facts,
                "Whoever marked",
                session.blinded().map(blind -> blind ? "did not know the climate" : "knew the climate"));
        add(facts, "Note", session.note());
        return facts;
    }

    private static String time(OffsetDateTime time) {
        Instant instant = time.toInstant();
        return Words.minute(Optional.of(instant)) + " universal time";
    }

    private static void add(List<EquipmentWords.Fact> facts, String name, Optional<String> value) {
        value.ifPresent(words -> facts.add(new EquipmentWords.Fact(name, words)));
    }

    private static List<Figure> figures(List<Plot> plots, PublishedSession session, boolean ofOutcomes) {
        return plots.stream()
                .filter(plot -> plot.id().equals("final-angle") == ofOutcomes)
                .map(plot -> figure(plot, session))
                .toList();
    }

    private static Figure figure(Plot plot, PublishedSession session) {
        String made = "session " + session.sessionKey();
        try {
            return new Figure(
                    plot.id(),
                    plot.title(),
                    PlotChart.svg(plot, made, session.invented(), new ChartSize(960, 420, 14)),
                    PlotChart.svg(plot, made, session.invented(), new ChartSize(360, 380, 11)));
        } catch (ChartUnavailable e) {
            // the page has its words all the same
            return new Figure(plot.id(), plot.title(), "", "");
        }
    }
}
