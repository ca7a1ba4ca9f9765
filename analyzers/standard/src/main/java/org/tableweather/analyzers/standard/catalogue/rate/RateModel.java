package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.tableweather.analyzers.standard.catalogue.rate.RateSummary.Cell;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.binomial.BinomialCell;
import org.tableweather.analyzers.standard.statistics.binomial.BinomialFit;
import org.tableweather.analyzers.standard.statistics.binomial.BinomialMixedModel;

/** The model of the odds fitted to a pool, and what it expects of each cell in its own room. */
final class RateModel {

    private static final double LEVEL = 0.99;

    final RatePool pool;
    /** As asked, without temperature where it could not be told apart. */
    final RateQuestion question;

    final BinomialFit fit;
    private final Map<String, Double> departures = new HashMap<>();
    private final double[] coefficients;

    private RateModel(RatePool pool, RateQuestion question, BinomialFit fit) {
        this.pool = pool;
        this.question = question;
        this.fit = fit;
        fit.modes().forEach(mode -> departures.put(mode.cluster(), mode.value()));
        coefficients = new double[fit.coefficients()];
        for (int i = 0; i < coefficients.length; i++) {
            coefficients[i] = fit.coefficient(i).value();
        }
    }

    static Answer<RateModel> of(RatePool pool, RateQuestion question) {
        List<BinomialCell> cells = new ArrayList<>();
        pool.cellsByRoom()
                .forEach((room, list) -> list.forEach(
                        cell -> cells.add(new BinomialCell(room, question.columns(cell), cell.made(), cell.tried()))));
        return new BinomialMixedModel(question.points(), Coverage.DEFAULT)
                .fit(cells)
                .then(fit -> Answer.of(new RateModel(pool, question, fit)));
    }

    /** The chance in this room. */
    double chance(String room, Cell cell) {
        double[] columns = question.columns(cell);
        double odds = coefficients[0] + departures.get(room);
        for (int i = 0; i < columns.length; i++) {
            odds += coefficients[i + 1] * columns[i];
        }
        return chance(odds);
    }

    /** {@code 1 / (1 + e^−x)}. */
    static double chance(double logOdds) {
        return 1 / (1 + StrictMath.exp(-logOdds));
    }

    /**
     * How much sessions differ beyond climate, room and luck: Pearson's {@code X²} of session totals.
     *
     * @source McCullagh1989
     */
    double pearson() {
        double sum = 0;
        for (RatePool.Counted session : pool.sessions) {
            double expected = 0;
            double variance = 0;
            for (Cell cell : session.cells()) {
                double p = chance(session.room(), cell);
                expected += cell.tried() * p;
                variance += cell.tried() * p * (1 - p);
            }
            sum += (session.made() - expected) * (session.made() - expected) / variance;
        }
        return sum;
    }

    /** Sessions less coefficients: more than are left, so that the test errs on the quiet side. */
    int pearsonDf() {
        return pool.sessions.size() - fit.coefficients();
    }

    /** Whether luck, room and climate do not explain how sessions differ, at 1 %. */
    boolean sessionsDiffer() {
        return pearson() > new ChiSquaredDistribution(pearsonDf()).inverseCumulativeProbability(LEVEL);
    }
}
