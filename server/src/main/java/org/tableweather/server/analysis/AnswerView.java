package org.tableweather.server.analysis;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Analysis.Effect;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.RoomEffects;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.schema.reference.Reference;
import org.tableweather.schema.reference.References;
import org.tableweather.server.web.Words;

/**
 * An analysis as a page shows it, every figure already in words.
 *
 * @param id of the analyzer
 * @param title of the analyzer
 * @param question that it answers
 * @param answer the sentence, or why there is none
 * @param empty whether nothing is published at all
 * @param answered whether there is a curve and its figures
 * @param invented whether any session is made up
 * @param madeFrom counts in words
 * @param figures its plots; empty when they cannot be drawn
 * @param query the choices as a query, without the question mark; empty for none
 * @param estimates rows of the table of estimates
 * @param curve rows of the table of the curve
 * @param variance rows of the table of scatter
 * @param rooms rows of the table of rooms, no more than a page can carry
 * @param roomsLeftOut how many rooms are not in it
 * @param warnings what a reader must know
 * @param method how it was computed
 * @param parameters names and values
 * @param analyzer id and version
 * @param hash names the set of sessions
 * @param sources citations
 */
record AnswerView(
        String id,
        String title,
        String question,
        String answer,
        boolean empty,
        boolean answered,
        boolean invented,
        String madeFrom,
        List<PlotFigure> figures,
        String query,
        List<List<String>> estimates,
        List<List<String>> curve,
        List<List<String>> variance,
        List<List<String>> rooms,
        int roomsLeftOut,
        List<String> warnings,
        String method,
        List<Map.Entry<String, String>> parameters,
        String analyzer,
        String hash,
        List<String> sources) {
    private static final int ROOMS = 500;

    AnswerView {
        figures = List.copyOf(figures);
    }

    /**
     * Puts an analysis into words, with all its plots.
     *
     * @param run the analysis
     * @param chosen the parameters that were set
     */
    static AnswerView of(AnalysisRun run, Map<String, String> chosen) {
        return of(run, chosen, PlotFigure.all(run));
    }

    /** The same without the plots beside the curve: the first page is read on a phone. */
    static AnswerView ofCurve(AnalysisRun run, Map<String, String> chosen) {
        return of(run, chosen, PlotFigure.curve(run));
    }

    private static AnswerView of(AnalysisRun run, Map<String, String> chosen, List<PlotFigure> figures) {
        Analysis.Estimated answer = run.analysis().fold(estimated -> estimated, none -> null);
        Optional<Analysis.Estimated> estimated = Optional.ofNullable(answer);
        return new AnswerView(
                run.info().id(),
                run.info().title(),
                run.info().question(),
                run.analysis().fold(Analysis.Estimated::sentence, Analysis.Declined::detail),
                run.dataset().trials() == 0,
                estimated.isPresent(),
                run.dataset().invented(),
                run.dataset().inWords(),
                figures,
                QueryText.of(chosen),
                rows(estimated, Analysis.Estimated::estimates, AnswerView::estimate),
                rows(estimated, Analysis.Estimated::curve, AnswerView::point),
                rows(estimated, Analysis.Estimated::variance, AnswerView::component),
                rows(
                        estimated,
                        any -> any.rooms()
                                .subList(0, Math.min(ROOMS, any.rooms().size())),
                        AnswerView::room),
                estimated.map(any -> Math.max(0, any.rooms().size() - ROOMS)).orElse(0),
                run.analysis().fold(Analysis.Estimated::warnings, Analysis.Declined::warnings),
                run.info().method(),
                parameters(run),
                run.info().id() + " " + run.info().version(),
                run.dataset().hash(),
                sources(run));
    }

    /** Columns of {@link #curve}. */
    public List<String> curveNames() {
        return List.of(
                "Relative humidity, %", "Mean over rooms", "95 % interval of the mean", "95 % interval of a new room");
    }

    /** Columns of {@link #estimates}. */
    public List<String> estimateNames() {
        return List.of("Estimate", "Value", "Standard error", "95 % interval", "Degrees of freedom", "Unit", "Meaning");
    }

    /** Columns of {@link #variance}. */
    public List<String> varianceNames() {
        return List.of("Between", "Standard deviation", "Correlation", "Note");
    }

    /** Columns of {@link #rooms}. */
    public List<String> roomNames() {
        return List.of("Room", "Sessions", "Attempts", "At 50 % humidity", "Per 10 % humidity");
    }

    /** What to type to have this answer again. */
    public String command() {
        StringBuilder command = new StringBuilder("tableweather analyze ").append(id);
        parameters.forEach(parameter -> {
            if (!parameter.getValue().isEmpty()) {
                command.append(" --set ").append(parameter.getKey()).append('=').append(parameter.getValue());
            }
        });
        return command.append(" --server URL").toString();
    }

    private static <T> List<List<String>> rows(
            Optional<Analysis.Estimated> answer,
            Function<Analysis.Estimated, List<T>> of,
            Function<T, List<String>> row) {
        return answer.map(of).orElse(List.of()).stream().map(row).toList();
    }

    private static List<String> estimate(Estimate one) {
        return List.of(
                one.name(),
                number(one.value()),
                number(one.standardError()),
                number(one.lower()) + " to " + number(one.upper()),
                one.df() == null ? "–" : String.format(Locale.ROOT, "%.1f", one.df()),
                one.unit(),
                one.meaning());
    }

    private static List<String> point(CurvePoint point) {
        return List.of(
                String.format(Locale.ROOT, "%.1f", point.rhPct()),
                number(point.mean()),
                number(point.lower()) + " to " + number(point.upper()),
                number(point.newRoomLower()) + " to " + number(point.newRoomUpper()));
    }

    private static List<String> component(VarianceComponent component) {
        return List.of(
                component.name(),
                number(component.sd()),
                number(component.value()),
                component.note().orElse(""));
    }

    private static List<String> room(RoomEffects room) {
        return List.of(
                room.room(),
                Long.toString(room.sessions()),
                Long.toString(room.trials()),
                effect(room, "intercept"),
                effect(room, "humidity"));
    }

    private static String effect(RoomEffects room, String name) {
        return room.effects().stream()
                .filter(effect -> effect.name().equals(name))
                .findFirst()
                .map(AnswerView::effect)
                .orElse("–");
    }

    private static String effect(Effect effect) {
        return number(effect.value()) + " ± " + number(effect.standardError());
    }

    private static List<Map.Entry<String, String>> parameters(AnalysisRun run) {
        Map<String, String> parameters =
                run.analysis().fold(Analysis.Estimated::parameters, Analysis.Declined::parameters);
        return List.copyOf(parameters.entrySet());
    }

    private static List<String> sources(AnalysisRun run) {
        List<String> keys = run.analysis().fold(Analysis.Estimated::references, Analysis.Declined::references);
        return keys.stream()
                .map(key -> References.byKey(key).map(Reference::citation).orElse(key))
                .toList();
    }

    private static String number(OptionalDouble value) {
        return value.isPresent() ? number(value.getAsDouble()) : "";
    }

    private static String number(Double value) {
        return Words.number(value, 3);
    }
}
