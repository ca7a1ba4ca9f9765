package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.statistics.JointTest;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedModel;
import org.tableweather.analyzers.standard.statistics.NestedOutcome;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/**
 * A curve for each group of sessions, alike in bend, and a test whether their slopes differ:
 *
 * <pre>
 * y = b₀ + b₁ x + Σ over other groups (c₀ d + c₁ d x) + the other columns + (u₀ + u₁ x)[room] + w[session] + e
 * H₀: all c₁ = 0
 * </pre>
 *
 * @source Kuznetsova2017
 */
final class HumiditySubgroups {

    private static final int LEAST_SESSIONS = 3;

    private final HumidityFit pooled;
    private final Subgrouping by;
    /** Groups with sessions enough, the first for the plain columns. */
    private final List<Integer> groups = new ArrayList<>();

    private final Map<Integer, Integer> sessions = new LinkedHashMap<>();
    private final int columns;

    HumiditySubgroups(HumidityFit pooled, Subgrouping by) {
        this.pooled = pooled;
        this.by = by;
        columns = pooled.columns().count();
        pooled.pool().traits.stream()
                .flatMap(List::stream)
                .forEach(traits -> sessions.merge(by.group(traits), 1, Integer::sum));
        for (int group = 0; group < by.groups.size(); group++) {
            if (sessions.getOrDefault(group, 0) >= LEAST_SESSIONS) {
                groups.add(group);
            }
        }
    }

    static HumidityPart of(HumidityFit pooled) {
        return pooled.question()
                .subgroup()
                .map(by -> new HumiditySubgroups(pooled, by).part())
                .orElse(HumidityPart.NOTHING);
    }

    private HumidityPart part() {
        if (groups.size() < 2) {
            return HumidityPart.warning("No two groups by " + by.parameter + " have " + LEAST_SESSIONS
                    + " sessions each: state the " + by.noun + " of more sessions, or add some of another group.");
        }
        NestedModel model = HumidityModels.of(pooled.columns(), 2 * (groups.size() - 1));
        NestedOutcome outcome = model.fit(parted());
        if (!(outcome instanceof NestedFit fit) || !fit.converged()) {
            return HumidityPart.warning("The curves by " + by.parameter + " could not be fitted.");
        }
        double[][] slopes = new double[groups.size() - 1][];
        for (int other = 1; other < groups.size(); other++) {
            slopes[other - 1] = new double[columns + 2 * slopes.length];
            slopes[other - 1][1 + 2 * other] = 1;
        }
        Optional<JointTest> test =
                fit.dropped().stream().anyMatch(this::isOfGroup) ? Optional.empty() : JointTest.of(fit, slopes);
        return test.map(found -> told(fit, found))
                .orElseGet(() -> HumidityPart.warning("Groups by " + by.parameter
                        + " cannot be told apart from the other columns: their humidities or rooms do not overlap."));
    }

    /** Columns 1 + 2 g and 2 + 2 g, the constant counted, are the group's own level and slope. */
    private boolean isOfGroup(int column) {
        return column >= 2 && column < 2 * groups.size();
    }

    private List<RoomSessions> parted() {
        List<RoomSessions> rooms = new ArrayList<>();
        for (int room = 0; room < pooled.pool().rooms.size(); room++) {
            RoomSessions given = pooled.pool().rooms.get(room);
            List<Moments> kept = new ArrayList<>();
            for (int session = 0; session < given.sessions().size(); session++) {
                int at = groups.indexOf(by.group(pooled.pool().traits.get(room).get(session)));
                if (at >= 0) {
                    kept.add(parted(given.sessions().get(session), at));
                }
            }
            if (!kept.isEmpty()) {
                rooms.add(new RoomSessions(given.key(), kept));
            }
        }
        return rooms;
    }

    /** Columns x, then d and d x for each other group, then the rest. */
    private Moments parted(Moments session, int group) {
        int size = session.columns();
        int more = 2 * (groups.size() - 1);
        double[][] linear = new double[size + more][size];
        double[] constant = new double[size + more];
        linear[0][0] = 1;
        if (group > 0) {
            constant[2 * group - 1] = 1;
            linear[2 * group][0] = 1;
        }
        for (int column = 1; column < size; column++) {
            linear[column + more][column] = 1;
        }
        return session.transform(linear, constant);
    }

    private double[] row(int group, double[] plain) {
        int more = 2 * (groups.size() - 1);
        double[] row = new double[columns + more];
        row[0] = plain[0];
        row[1] = plain[1];
        if (group > 0) {
            row[2 * group] = plain[0];
            row[2 * group + 1] = plain[1];
        }
        System.arraycopy(plain, 2, row, 2 + more, columns - 2);
        return row;
    }

    private HumidityPart told(NestedFit fit, JointTest test) {
        List<Estimate> estimates = new ArrayList<>();
        List<Series> series = new ArrayList<>();
        for (int group = 0; group < groups.size(); group++) {
            String name = by.groups.get(groups.get(group));
            Quantity slope = fit.contrast(row(group, pooled.columns().slopeRow()));
            estimates.add(FitFigures.estimate(
                    "humidity.subgroup." + (groups.get(group) + 1),
                    slope,
                    pooled.slopeUnit(),
                    pooled.slopeMeaning() + ", " + by.noun + " " + name + " ("
                            + Figures.counted(sessions.get(groups.get(group)), "session") + ")"));
            addCurve(series, fit, group, by.noun + " " + name);
        }
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("subgroupF", test.statistic());
        facts.put("subgroupNumeratorDf", test.numerator());
        facts.put("subgroupDenominatorDf", test.denominator());
        facts.put("subgroupPValue", test.pValue());
        String chance = test.pValue() < 0.001 ? "p < 0.001" : "p = " + Figures.fixed(test.pValue(), 3);
        String words = test.pValue() < 0.05
                ? " By " + by.parameter + " the slopes differ (" + chance + ")."
                : " By " + by.parameter + " the slopes do not differ beyond chance (" + chance + ").";
        Plot plot = new Plot(
                "subgroups",
                "Curves by " + by.parameter + ", 95 % bands of the mean",
                pooled.curve().axis(),
                pooled.response().axis(),
                series);
        return new HumidityPart(words, estimates, List.of(plot), warnings(), facts);
    }

    private List<String> warnings() {
        List<String> warnings = new ArrayList<>();
        int left = 0;
        for (Map.Entry<Integer, Integer> entry : sessions.entrySet()) {
            left += groups.contains(entry.getKey()) ? 0 : entry.getValue();
        }
        if (left > 0) {
            warnings.add(Figures.counted(left, "session") + " left out of the curves by " + by.parameter
                    + ": the group is not stated, or has fewer than " + LEAST_SESSIONS + " sessions.");
        }
        return warnings;
    }

    private void addCurve(List<Series> series, NestedFit fit, int group, String name) {
        List<Double> x = new ArrayList<>();
        List<Double> mean = new ArrayList<>();
        List<Double> lower = new ArrayList<>();
        List<Double> upper = new ArrayList<>();
        for (double rhPct : pooled.curve().range().grid()) {
            Quantity at = fit.contrast(row(group, pooled.curve().row(rhPct)));
            double reach = FitFigures.reach(at);
            x.add(pooled.curve().abscissaOf(rhPct));
            mean.add(at.value());
            lower.add(at.value() - reach);
            upper.add(at.value() + reach);
        }
        series.add(new Series(name + ", 95 %", Mark.BAND, x, mean, lower, upper));
        series.add(new Series(name, Mark.LINE, x, mean, List.of(), List.of()));
    }
}
