package org.tableweather.analyzers.standard.statistics.nonlinear;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.standard.statistics.nonlinear.LinearisedCriterion.RoomModes;

/** Cells by room and session, with the effects found so far. */
final class GroupedCells {

    private final Map<String, Map<String, List<ResponseCell>>> cells = new LinkedHashMap<>();
    private final int q;
    private List<RoomModes> modes = List.of();

    private GroupedCells(int q) {
        this.q = q;
    }

    static GroupedCells of(List<ResponseCell> cells, int q) {
        GroupedCells grouped = new GroupedCells(q);
        for (ResponseCell cell : cells) {
            grouped.cells
                    .computeIfAbsent(cell.room(), room -> new LinkedHashMap<>())
                    .computeIfAbsent(cell.session(), session -> new ArrayList<>())
                    .add(cell);
        }
        return grouped;
    }

    void take(List<RoomModes> found) {
        modes = found;
    }

    /** Handles a cell with its own coefficients. */
    private interface Visit {
        void cell(int room, int session, ResponseCell cell, double[] coefficients);
    }

    private void visit(double[] beta, NonlinearMixedModel model, Visit visit) {
        int room = 0;
        for (Map<String, List<ResponseCell>> sessions : cells.values()) {
            int session = 0;
            for (List<ResponseCell> own : sessions.values()) {
                double[] coefficients = coefficients(beta, model, room, session);
                for (ResponseCell cell : own) {
                    visit.cell(room, session, cell, coefficients);
                }
                session++;
            }
            room++;
        }
    }

    private double[] coefficients(double[] beta, NonlinearMixedModel model, int room, int session) {
        double[] coefficients = beta.clone();
        if (!modes.isEmpty()) {
            RoomModes mode = modes.get(room);
            for (int i = 0; i < model.roomColumns().length; i++) {
                coefficients[model.roomColumns()[i]] += mode.room()[i];
            }
            double[] own = mode.sessions().get(session);
            for (int i = 0; i < own.length; i++) {
                coefficients[model.sessionColumns()[i]] += own[i];
            }
        }
        return coefficients;
    }

    List<List<double[][]>> crossProducts(double[] beta, NonlinearMixedModel model) {
        List<List<double[][]>> all = new ArrayList<>();
        for (Map<String, List<ResponseCell>> sessions : cells.values()) {
            List<double[][]> room = new ArrayList<>();
            sessions.keySet().forEach(key -> room.add(new double[q + 1][q + 1]));
            all.add(room);
        }
        visit(
                beta,
                model,
                (room, session, cell, coefficients) ->
                        add(all.get(room).get(session), cell.linearised(coefficients), cell.weights()));
        return all;
    }

    private static void add(double[][] sum, double[][] rows, double[][] weights) {
        for (int k = 0; k < rows.length; k++) {
            for (int l = 0; l < rows.length; l++) {
                for (int i = 0; i < sum.length; i++) {
                    double left = rows[k][i] * weights[k][l];
                    for (int j = 0; j < sum.length; j++) {
                        sum[i][j] += left * rows[l][j];
                    }
                }
            }
        }
    }

    double chiSquared(double[] beta, NonlinearMixedModel model) {
        double[] sum = new double[1];
        visit(beta, model, (room, session, cell, coefficients) -> {
            double[] left = cell.residuals(coefficients);
            for (int k = 0; k < left.length; k++) {
                for (int l = 0; l < left.length; l++) {
                    sum[0] += left[k] * cell.weights()[k][l] * left[l];
                }
            }
        });
        return sum[0];
    }

    List<NonlinearFit.Room> rooms() {
        List<NonlinearFit.Room> rooms = new ArrayList<>();
        int at = 0;
        for (Map.Entry<String, Map<String, List<ResponseCell>>> entry : cells.entrySet()) {
            RoomModes mode = modes.get(at++);
            double[] errors = new double[mode.room().length];
            for (int i = 0; i < errors.length; i++) {
                errors[i] = Math.sqrt(Math.max(0, mode.covariance()[i][i]));
            }
            rooms.add(new NonlinearFit.Room(
                    entry.getKey(), entry.getValue().size(), mode.room(), errors, mode.covariance()));
        }
        return rooms;
    }
}
