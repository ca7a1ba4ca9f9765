package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.standard.catalogue.rail.RailPool.Used;
import org.tableweather.analyzers.standard.physics.Ball;
import org.tableweather.analyzers.standard.physics.BallPath;
import org.tableweather.analyzers.standard.physics.BallRun;
import org.tableweather.analyzers.standard.physics.BallState;
import org.tableweather.analyzers.standard.physics.ClothFriction;
import org.tableweather.analyzers.standard.physics.PathEvent;
import org.tableweather.analyzers.standard.statistics.nonlinear.ResponseCell;
import org.tableweather.analyzers.standard.statistics.nonlinear.ResponseCell.Mean;
import org.tableweather.schema.geometry.TableSize;

/**
 * What each way of measuring would tell of the rail in the same sessions, rooms and numbers of attempts: standard errors that the design
 * gives at the fitted rail, whatever was observed.
 *
 * <p>Whole paths: the places of the first four rail contacts and of the next one, of a ball that rolls once round a table of 2540 mm from
 * (1.5, 2.5) towards (6.09, 0.09) diamonds at 4.5 m/s, as in the shot {@code kick-4-rail}, each good to what the scatter of the angle makes
 * of it over the first leg.
 */
final class Identification {

    /** Ways of measuring. */
    enum Way {
        /** Rebound angles. */
        ANGLES("angles"),
        /** Rebound angles and speeds. */
        SPEEDS("angles and speeds"),
        /** Places along a path of four rails. */
        PATHS("whole paths");

        final String words;

        Way(String words) {
            this.words = words;
        }
    }

    private static final int CONTACTS = 5;
    private static final double PATH_MPS = 4.5;
    private static final TableSize TABLE = TableSize.REFERENCE;

    private final FittedRail rail;

    Identification(FittedRail rail) {
        this.rail = rail;
    }

    /** Each way with the standard errors of its coefficients; without any where it does not tell them apart. */
    List<Map<String, Object>> facts() {
        List<Map<String, Object>> facts = new ArrayList<>();
        for (Way way : Way.values()) {
            Map<String, Object> fact = new LinkedHashMap<>();
            fact.put("from", way.words);
            double[] errors = errors(way);
            for (int i = 0; i < errors.length; i++) {
                fact.put(rail.design.terms.get(i).key() + ".error", errors[i]);
            }
            fact.put("tells", told(errors));
            facts.add(fact);
        }
        return facts;
    }

    /** Those that are known better than they might matter. */
    private List<String> told(double[] errors) {
        List<String> told = new ArrayList<>();
        for (int i = 0; i < errors.length; i++) {
            RailTerm term = rail.design.terms.get(i);
            if (errors[i] < term.typical) {
                told.add(term.key());
            }
        }
        return told;
    }

    /** Standard errors; empty when the way does not tell the coefficients apart. */
    double[] errors(Way way) {
        List<ResponseCell> cells =
                rail.pool.used.stream().map(used -> cell(way, used)).toList();
        return rail.design
                .model()
                .expected(cells, rail.fit.coefficients(), rail.deviations())
                .fold(Identification::roots, refusal -> new double[0]);
    }

    private static double[] roots(double[][] covariance) {
        double[] roots = new double[covariance.length];
        for (int i = 0; i < roots.length; i++) {
            roots[i] = Math.sqrt(covariance[i][i]);
        }
        return roots;
    }

    private ResponseCell cell(Way way, Used used) {
        RailResponse pair = rail.design.response(used);
        Mean mean = way == Way.PATHS
                ? parameters -> path(parameters, used.noseSine())
                : new RailResponse(
                        pair.approachDeg(),
                        pair.speedMps(),
                        pair.roll(),
                        pair.noseSine(),
                        pair.stepped(),
                        way == Way.SPEEDS);
        double[][] weights =
                way == Way.PATHS ? pathWeights(used.pairs()) : rail.scatter.weights(used.pairs(), way == Way.SPEEDS);
        return new ResponseCell(
                used.room(), used.session(), new double[weights.length], weights, rail.design.rows(used), mean);
    }

    private double[] path(double[] parameters, double noseSine) {
        BallState start = BallState.sent(TABLE.point(1.5, 2.5), TABLE.point(6.09, 0.09), PATH_MPS, 1, 0, Ball.POOL);
        BallPath path = new BallRun(
                        TABLE,
                        Ball.POOL,
                        ClothFriction.TYPICAL,
                        RailResponse.impact(
                                RailResponse.rail(parameters[0], parameters[1], noseSine),
                                rail.pool.question.stepped()))
                .toRails(start, CONTACTS);
        double[] places = new double[CONTACTS - 1];
        List<PathEvent> contacts = path.contacts();
        for (int i = 1; i < contacts.size(); i++) {
            PathEvent contact = contacts.get(i);
            boolean across = contact.rail().orElseThrow().ordinal() < 2;
            places[i - 1] = across ? contact.after().yM() : contact.after().xM();
        }
        return places;
    }

    private double[][] pathWeights(long n) {
        double sd = TABLE.playingWidthM() * Math.toRadians(rail.scatter.angleSd());
        double[][] weights = new double[CONTACTS - 1][CONTACTS - 1];
        for (int i = 0; i < weights.length; i++) {
            double here = sd * (i + 1);
            weights[i][i] = n / (here * here);
        }
        return weights;
    }
}
