package org.tableweather.analyzers.standard.statistics.nonlinear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton;

/**
 * Minus twice the restricted log likelihood of the linearised model over the standard deviations of its random effects, without
 * constants: {@code log |V| + log |X'V⁻¹X| + r'V⁻¹r}, with its gradient. Even in each standard deviation.
 */
final class LinearisedCriterion implements SaddleFreeNewton.Objective {

    private final List<List<double[][]>> rooms;
    private final int[] roomColumns;
    private final int[] sessionColumns;
    private final double[] scales;
    private final int q;
    private double[][] inverse;
    private double[] coefficients;
    private double[] contrast;

    /**
     * Of cross-products {@code [XJ | z]'W[XJ | z]} of each session of each room.
     *
     * @param scales typical standard deviations, those of rooms first
     */
    LinearisedCriterion(
            List<List<double[][]>> rooms, int[] roomColumns, int[] sessionColumns, double[] scales, int coefficients) {
        this.rooms = rooms;
        this.roomColumns = roomColumns;
        this.sessionColumns = sessionColumns;
        this.scales = scales;
        this.q = coefficients;
    }

    /** A room with its effects integrated out. */
    private record Stages(List<RandomStage> sessions, RandomStage room) {}

    /** Rooms' standard deviations, then sessions'. */
    double[] deviations(double[] at) {
        double[] deviations = at.clone();
        for (int i = 0; i < at.length; i++) {
            deviations[i] *= scales[i];
        }
        return deviations;
    }

    @Override
    public double evaluate(double[] at, double[] gradient) {
        double[] all = deviations(at);
        double[] ofRooms = Arrays.copyOf(all, roomColumns.length);
        double[] ofSessions = Arrays.copyOfRange(all, roomColumns.length, all.length);
        List<Stages> stages = new ArrayList<>();
        double[][] top = new double[q + 1][q + 1];
        double criterion = 0;
        for (List<double[][]> room : rooms) {
            Stages each = stages(room, ofRooms, ofSessions);
            for (RandomStage session : each.sessions) {
                criterion += session.logDeterminant;
            }
            criterion += each.room.logDeterminant;
            add(top, each.room.after);
            stages.add(each);
        }
        criterion += solve(top);
        gradient(stages, all, gradient);
        return criterion;
    }

    private Stages stages(List<double[][]> room, double[] ofRooms, double[] ofSessions) {
        List<RandomStage> sessions = new ArrayList<>();
        double[][] sum = new double[q + 1][q + 1];
        for (double[][] session : room) {
            RandomStage stage = new RandomStage(session, sessionColumns, ofSessions);
            add(sum, stage.after);
            sessions.add(stage);
        }
        return new Stages(sessions, new RandomStage(sum, roomColumns, ofRooms));
    }

    private static void add(double[][] sum, double[][] term) {
        for (int i = 0; i < sum.length; i++) {
            for (int j = 0; j < sum.length; j++) {
                sum[i][j] += term[i][j];
            }
        }
    }

    private double solve(double[][] top) {
        inverse = new double[q][];
        for (int i = 0; i < q; i++) {
            inverse[i] = Arrays.copyOf(top[i], q);
        }
        double log = SmallInverse.of(inverse);
        coefficients = new double[q];
        contrast = new double[q + 1];
        double left = top[q][q];
        for (int i = 0; i < q; i++) {
            for (int j = 0; j < q; j++) {
                coefficients[i] += inverse[i][j] * top[j][q];
            }
            contrast[i] = -coefficients[i];
            left -= coefficients[i] * top[i][q];
        }
        contrast[q] = 1;
        return log + left;
    }

    private void gradient(List<Stages> stages, double[] deviations, double[] gradient) {
        Arrays.fill(gradient, 0);
        for (Stages each : stages) {
            for (int i = 0; i < roomColumns.length; i++) {
                double[] row = each.room.after[roomColumns[i]];
                gradient[i] += 2 * deviations[i] * scales[i] * slope(row, row[roomColumns[i]]);
            }
            for (RandomStage session : each.sessions) {
                for (int i = 0; i < sessionColumns.length; i++) {
                    double[] row = session.after[sessionColumns[i]];
                    int place = roomColumns.length + i;
                    double slope = slope(each.room.through(row), each.room.through(row, sessionColumns[i]));
                    gradient[place] += 2 * deviations[place] * scales[place] * slope;
                }
            }
        }
    }

    /** {@code Z'V⁻¹Z − (Z'V⁻¹r)² − Z'V⁻¹X (X'V⁻¹X)⁻¹ X'V⁻¹Z}. */
    private double slope(double[] row, double own) {
        double score = dot(row, contrast);
        double taken = 0;
        for (int i = 0; i < q; i++) {
            for (int j = 0; j < q; j++) {
                taken += row[i] * inverse[i][j] * row[j];
            }
        }
        return own - score * score - taken;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** β of the last evaluation. */
    double[] coefficients() {
        return coefficients.clone();
    }

    /** Cov β of the last evaluation. */
    double[][] covariance() {
        double[][] copy = new double[q][];
        for (int i = 0; i < q; i++) {
            copy[i] = inverse[i].clone();
        }
        return copy;
    }

    /** Effects of rooms and sessions for the last evaluation's β: in the order of the rooms, each room before its sessions. */
    List<RoomModes> modes(double[] at) {
        double[] all = deviations(at);
        double[] ofRooms = Arrays.copyOf(all, roomColumns.length);
        double[] ofSessions = Arrays.copyOfRange(all, roomColumns.length, all.length);
        List<RoomModes> modes = new ArrayList<>();
        for (List<double[][]> room : rooms) {
            Stages each = stages(room, ofRooms, ofSessions);
            double[] effects = new double[roomColumns.length];
            for (int i = 0; i < effects.length; i++) {
                effects[i] = ofRooms[i] * ofRooms[i] * dot(each.room.after[roomColumns[i]], contrast);
            }
            List<double[]> sessions = new ArrayList<>();
            for (RandomStage session : each.sessions) {
                double[] own = new double[sessionColumns.length];
                for (int i = 0; i < own.length; i++) {
                    double[] row = each.room.through(session.after[sessionColumns[i]]);
                    own[i] = ofSessions[i] * ofSessions[i] * dot(row, contrast);
                }
                sessions.add(own);
            }
            modes.add(new RoomModes(effects, each.room.gain, sessions));
        }
        return modes;
    }

    /**
     * Effects of a room and its sessions.
     *
     * @param room in the order of the room's columns
     * @param covariance of these, β given
     * @param sessions in the order of the session's columns
     */
    record RoomModes(double[] room, double[][] covariance, List<double[]> sessions) {}
}
