package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.catalogue.rail.RailPool.Used;
import org.tableweather.analyzers.standard.numeric.StudentT;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;
import org.tableweather.analyzers.standard.statistics.nonlinear.NonlinearFit;
import org.tableweather.analyzers.standard.statistics.nonlinear.ResponseCell;

/** A rail fitted to a pool. */
final class FittedRail {

    private static final double[][] STARTS = {{0.8, 0.2}, {0.7, 0.12}, {0.9, 0.35}};
    private static final double COVERAGE = 0.95;

    final RailPool pool;
    final RailDesign design;
    final PairScatter scatter;
    final NonlinearFit fit;

    private FittedRail(RailPool pool, RailDesign design, PairScatter scatter, NonlinearFit fit) {
        this.pool = pool;
        this.design = design;
        this.scatter = scatter;
        this.fit = fit;
    }

    /** Fits from one start after another until a search settles; the scatter is taken again about the fitted rail. */
    static Answer<FittedRail> of(RailPool pool, RailDesign design) {
        Answer<FittedRail> last = Answer.refuse(Cause.NOT_CONVERGED, "no start");
        for (double[] start : STARTS) {
            last = from(pool, design, design.start(start[0], start[1]));
            if (last instanceof Answer.Given<FittedRail> given) {
                FittedRail first = given.value();
                return from(pool, design, first.fit.coefficients());
            }
        }
        return last;
    }

    private static Answer<FittedRail> from(RailPool pool, RailDesign design, double[] start) {
        double[] typical = {start[design.place(RailTerm.RESTITUTION)], start[design.place(RailTerm.FRICTION)]};
        Optional<PairScatter> scatter = PairScatter.of(pool.used, design, typical);
        if (scatter.isEmpty()) {
            return Answer.refuse(
                    Cause.NO_VARIATION, "no condition was tried twice with different outcomes: the scatter is unknown");
        }
        return design.model()
                .fit(cells(pool.used, design, scatter.get()), start)
                .then(fit -> Answer.of(new FittedRail(pool, design, scatter.get(), fit)));
    }

    private static List<ResponseCell> cells(List<Used> used, RailDesign design, PairScatter scatter) {
        List<ResponseCell> cells = new ArrayList<>();
        for (Used each : used) {
            cells.add(new ResponseCell(
                    each.room(),
                    each.session(),
                    observed(each),
                    scatter.weights(each.pairs(), each.withRatio()),
                    design.rows(each),
                    design.response(each)));
        }
        return cells;
    }

    private static double[] observed(Used each) {
        double angle = each.cell().mean(RailSummary.Column.REBOUND_DEG);
        return each.withRatio()
                ? new double[] {angle, each.cell().mean(RailSummary.Column.SPEED_RATIO)}
                : new double[] {angle};
    }

    double value(RailTerm term) {
        return fit.coefficients()[design.place(term)];
    }

    double error(RailTerm term) {
        return fit.standardError(design.place(term));
    }

    boolean has(RailTerm term) {
        return design.terms.contains(term);
    }

    /** Rooms less one, for what varies between rooms; else sessions less rooms and what else varies within rooms. */
    double df(RailTerm term) {
        int rooms = pool.rooms.size() - 1;
        int inner = pool.sessions.size() - pool.rooms.size() - design.terms.size() + 2;
        boolean within = term == RailTerm.RESTITUTION_TEMPERATURE
                || term == RailTerm.FRICTION_TEMPERATURE
                || term == RailTerm.RESTITUTION_SPEED;
        return Math.max(1, within ? inner : rooms);
    }

    double reach(double error, double df) {
        return error * StudentT.halfWidth(COVERAGE, df);
    }

    /** e and log μ at a humidity (in steps) and 21 °C, at 1 m/s across. */
    double[] parameters(double x) {
        return parameters(x, 1);
    }

    private double[] parameters(double x, double acrossMps) {
        double[][] rows = design.rows(x, 0, acrossMps);
        return new double[] {fit.value(rows[0]), fit.value(rows[1])};
    }

    /** Their standard errors. */
    double[] errors(double x) {
        double[][] rows = design.rows(x, 0, 1);
        return new double[] {fit.standardError(rows[0]), fit.standardError(rows[1])};
    }

    /**
     * By how much the rebound of a rolling ball changes between two humidities, degrees: value and standard error to first order.
     *
     * @param approachDeg of arrival
     * @param speedMps of arrival
     */
    double[] change(double fromX, double toX, double approachDeg, double speedMps) {
        RailResponse ball =
                new RailResponse(approachDeg, speedMps, 1, pool.used.get(0).noseSine(), pool.question.stepped(), false);
        double value = angle(ball, toX, fit.coefficients()) - angle(ball, fromX, fit.coefficients());
        double[] gradient = new double[design.terms.size()];
        double[] moved = fit.coefficients().clone();
        for (int i = 0; i < gradient.length; i++) {
            double width = 1e-4;
            moved[i] += width;
            double up = angle(ball, toX, moved) - angle(ball, fromX, moved);
            moved[i] -= 2 * width;
            double down = angle(ball, toX, moved) - angle(ball, fromX, moved);
            moved[i] += width;
            gradient[i] = (up - down) / (2 * width);
        }
        return new double[] {value, fit.standardError(gradient)};
    }

    private double angle(RailResponse ball, double x, double[] coefficients) {
        double[][] rows = design.rows(x, 0, ball.acrossMps());
        double[] parameters = new double[2];
        for (int i = 0; i < coefficients.length; i++) {
            parameters[0] += rows[0][i] * coefficients[i];
            parameters[1] += rows[1][i] * coefficients[i];
        }
        return ball.at(parameters)[0];
    }

    /** Standard deviations of rooms' effects, then of sessions'. */
    double[] deviations() {
        double[] all = java.util.Arrays.copyOf(
                fit.roomDeviations(), fit.roomDeviations().length + fit.sessionDeviations().length);
        System.arraycopy(fit.sessionDeviations(), 0, all, fit.roomDeviations().length, fit.sessionDeviations().length);
        return all;
    }
}
