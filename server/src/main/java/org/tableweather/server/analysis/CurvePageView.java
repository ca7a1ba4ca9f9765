package org.tableweather.server.analysis;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.ChartSize;
import org.tableweather.analyzers.host.ChartUnavailable;
import org.tableweather.analyzers.host.CurveChart;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Analysis.Effect;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.RoomEffects;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.schema.reference.Reference;
import org.tableweather.schema.reference.References;

/**
 * The first page's content, every figure already in words.
 *
 * @param title of the analyzer
 * @param question that it answers
 * @param answer the sentence, or why there is none
 * @param empty whether nothing is published at all
 * @param answered whether there is a curve and its figures
 * @param invented whether any session is made up
 * @param madeFrom counts in words
 * @param wideChart SVG; empty when it cannot be drawn
 * @param narrowChart the same for a phone
 * @param estimates rows of the table of estimates
 * @param curve rows of the table of the curve
 * @param variance rows of the table of scatter
 * @param rooms rows of the table of rooms
 * @param warnings what a reader must know
 * @param method how it was computed
 * @param parameters names and values
 * @param analyzer id and version
 * @param hash names the set of sessions
 * @param sources citations
 */
record CurvePageView(
        String title,
        String question,
        String answer,
        boolean empty,
        boolean answered,
        boolean invented,
        String madeFrom,
        Optional<String> wideChart,
        Optional<String> narrowChart,
        List<List<String>> estimates,
        List<List<String>> curve,
        List<List<String>> variance,
        List<List<String>> rooms,
        List<String> warnings,
        String method,
        List<Map.Entry<String, String>> parameters,
        String analyzer,
        String hash,
        List<String> sources) {

    static CurvePageView of(AnalysisRun run) {
        Analysis.Estimated answer = run.analysis().fold(estimated -> estimated, none -> null);
        Optional<Analysis.Estimated> estimated = Optional.ofNullable(answer);
        return new CurvePageView(
                run.info().title(),
                run.info().question(),
                run.analysis().fold(Analysis.Estimated::sentence, Analysis.Declined::detail),
                run.dataset().trials() == 0,
                estimated.isPresent(),
                run.dataset().invented(),
                madeFrom(run.dataset()),
                chart(run, ChartSize.page()),
                chart(run, ChartSize.phone()),
                rows(estimated, Analysis.Estimated::estimates, CurvePageView::estimate),
                rows(estimated, Analysis.Estimated::curve, CurvePageView::point),
                rows(estimated, Analysis.Estimated::variance, CurvePageView::component),
                rows(estimated, Analysis.Estimated::rooms, CurvePageView::room),
                run.analysis().fold(Analysis.Estimated::warnings, Analysis.Declined::warnings),
                run.info().method(),
                parameters(run),
                run.info().id() + " " + run.info().version(),
                run.dataset().hash(),
                sources(run));
    }

    private static String madeFrom(AnalysisRun.Dataset dataset) {
        return String.format(
                Locale.ROOT,
                "%,d rooms, %,d sessions, %,d attempts",
                dataset.rooms(),
                dataset.sessions(),
                dataset.trials());
    }

    private static Optional<String> chart(AnalysisRun run, ChartSize size) {
        try {
            return Optional.of(CurveChart.svg(run, size));
        } catch (ChartUnavailable e) {
            // the page has the figures all the same
            return Optional.empty();
        }
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
                .map(CurvePageView::effect)
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

    /** Three decimals, with a true minus sign. */
    private static String number(Double value) {
        return value == null || !Double.isFinite(value)
                ? "–"
                : String.format(Locale.ROOT, "%.3f", value).replace('-', '−');
    }
}
