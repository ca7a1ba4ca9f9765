package org.tableweather.analyzers.standard.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton.Minimum;
import org.tableweather.analyzers.standard.statistics.NestedRefusal.Cause;

/** Finds what the data can tell, sets the model up for that, and looks for the optimum. */
final class NestedPreparation {

    /** From this many rooms on the criterion had one optimum in all designs tried. */
    private static final int ROOMS_FOR_ONE_START = 50;

    private static final double[][] STARTS = {{0.5, 0.5}, {0.05, 2}, {2, 0.2}};
    private static final double SAME_OPTIMUM = 1e-5;
    private static final double LEAST_RESIDUAL = 1e-12;

    private final NestedModel model;
    private final Set<Caution> cautions = EnumSet.noneOf(Caution.class);
    private final List<RoomSessions> rooms;
    private final List<Moments> sessions;
    private Optional<NestedFit> near = Optional.empty();

    NestedPreparation(NestedModel model, List<RoomSessions> given) {
        this.model = model;
        List<RoomSessions> filled = given.stream()
                .map(room -> new RoomSessions(
                        room.key(),
                        room.sessions().stream().filter(part -> part.n() > 0).toList()))
                .filter(room -> !room.sessions().isEmpty())
                .toList();
        rooms = meansIfConstantWithin(filled);
        sessions = NestedData.sessionsOf(rooms);
    }

    /** Begins at another fit, where one start is enough. */
    NestedPreparation near(NestedFit other) {
        near = Optional.of(other);
        return this;
    }

    NestedOutcome fit() {
        if (rooms.isEmpty()) {
            return new NestedRefusal(Cause.NO_DATA, "no rows");
        }
        Moments total = Moments.merged(sessions);
        int covariates = total.columns() - 1;
        int free = covariates - requireLast(covariates);
        List<Integer> kept = new ArrayList<>(Collinearity.independent(total, free));
        if (kept.size() < free) {
            cautions.add(Caution.COLUMNS_DROPPED);
        }
        if (total.n() <= kept.size() + 1) {
            return new NestedRefusal(
                    Cause.TOO_FEW_ROWS, total.n() + " rows for " + (kept.size() + 1) + " coefficients");
        }
        IntStream.range(free, covariates).forEach(kept::add);
        if (total.n() > rooms.size() && rooms.stream().allMatch(room -> constantWithin(room.merged()))) {
            return exactFit(total.n() + " rows never vary within their room, in " + rooms.size() + " rooms");
        }
        FitColumns columns = new FitColumns(covariates + 1, kept, randomColumns(kept));
        NestedData data = new NestedData(rooms.stream().map(columns::select).toList(), total.select(columns.columns()));
        return search(data, columns);
    }

    /** The number of penalised columns; they stand behind the others. */
    private int requireLast(int covariates) {
        List<Integer> smooth = model.smooths().stream().flatMap(List::stream).toList();
        List<Integer> last = IntStream.rangeClosed(covariates - smooth.size() + 1, covariates)
                .boxed()
                .toList();
        if (!smooth.equals(last)) {
            throw new IllegalArgumentException(
                    "penalised columns " + smooth + " must be the last of " + covariates + " covariates: " + last);
        }
        return smooth.size();
    }

    private List<RoomSessions> meansIfConstantWithin(List<RoomSessions> filled) {
        List<Moments> all = NestedData.sessionsOf(filled);
        boolean repeated = all.stream().anyMatch(part -> part.n() > 1);
        boolean constant = all.stream().allMatch(NestedPreparation::constantWithin);
        if (!repeated || !constant) {
            return filled;
        }
        cautions.add(Caution.MEANS_ONLY);
        return filled.stream()
                .map(room -> new RoomSessions(
                        room.key(),
                        room.sessions().stream()
                                .map(NestedPreparation::meanAlone)
                                .toList()))
                .toList();
    }

    private static boolean constantWithin(Moments part) {
        return part.cross(part.columns() - 1, part.columns() - 1) == 0;
    }

    private static Moments meanAlone(Moments part) {
        return new Moments(1, part.mean(), new double[Moments.packedLength(part.columns())]);
    }

    /** Columns with a room effect that the data can show, constant as 0. */
    private List<Integer> randomColumns(List<Integer> kept) {
        if (rooms.size() == 1) {
            cautions.add(Caution.ONE_ROOM);
            return List.of();
        }
        if (rooms.size() == sessions.size() && allSingle()) {
            cautions.add(Caution.ROOM_IN_RESIDUAL);
            return List.of();
        }
        if (rooms.size() < 5) {
            cautions.add(Caution.FEW_ROOMS);
        }
        List<Integer> random = model.random().stream()
                .filter(column -> column == 0 || kept.contains(column - 1))
                .toList();
        boolean slopes = random.stream().anyMatch(column -> column > 0);
        if (slopes && random.stream().filter(column -> column > 0).allMatch(this::constantInEveryRoom)) {
            cautions.add(Caution.SLOPE_FROM_SPREAD);
        }
        return random;
    }

    private boolean constantInEveryRoom(int column) {
        return rooms.stream().allMatch(room -> room.merged().cross(column - 1, column - 1) == 0);
    }

    private boolean allSingle() {
        return sessions.stream().allMatch(part -> part.n() == 1);
    }

    private boolean sessionsSeparable() {
        if (model.sessions() == NestedModel.Sessions.ALIKE) {
            return false;
        }
        if (allSingle()) {
            cautions.add(Caution.SESSION_IN_RESIDUAL);
            return false;
        }
        if (rooms.size() == sessions.size()) {
            cautions.add(Caution.SESSION_IN_ROOM);
            return false;
        }
        return true;
    }

    private NestedOutcome search(NestedData data, FitColumns columns) {
        int[] random = columns.randomPositions();
        double[] scale = new double[random.length];
        for (int u = 0; u < random.length; u++) {
            scale[u] = data.rms[random[u]];
        }
        NestedParameters parameters =
                new NestedParameters(scale, sessionsSeparable(), model.covariance(), smoothScale(data, columns));
        NestedCriterion criterion =
                new NestedCriterion(data, parameters, random, model.method(), smoothOf(data, columns));
        double residual = criterion.residual(parameters.start(0, 0));
        int response = data.width * data.width - 1;
        double least = LEAST_RESIDUAL * criterion.reduction.total[response];
        if (!(residual > least)) {
            return exactFit(data);
        }
        Minimum best = lowest(criterion);
        criterion.moveTo(best.at());
        if (!(criterion.top.residual > least)) {
            return exactFit(data);
        }
        return new NestedFit(model, columns, rooms, criterion, best, cautions);
    }

    private int[] smoothOf(NestedData data, FitColumns columns) {
        int[] groups = new int[model.smooths().isEmpty() ? 0 : data.width - 1];
        Arrays.fill(groups, -1);
        for (int group = 0; group < model.smooths().size(); group++) {
            for (int column : model.smooths().get(group)) {
                groups[columns.position(column)] = group;
            }
        }
        return groups;
    }

    private double[] smoothScale(NestedData data, FitColumns columns) {
        return model.smooths().stream()
                .mapToDouble(group -> group.stream()
                        .mapToDouble(column -> data.rms[columns.position(column)])
                        .sum())
                .map(sum -> sum > 0 ? sum : 1)
                .toArray();
    }

    private static NestedRefusal exactFit(NestedData data) {
        return exactFit(data.trials + " rows are reproduced to rounding by " + (data.width - 1)
                + " coefficients and the rooms");
    }

    private static NestedRefusal exactFit(String what) {
        return new NestedRefusal(Cause.EXACT_FIT, what + ": no scatter is left to judge them by");
    }

    private Minimum lowest(NestedCriterion criterion) {
        NestedParameters parameters = criterion.parameters;
        if (parameters.size == 0) {
            return new Minimum(new double[0], criterion.evaluate(new double[0], new double[0]), true);
        }
        List<Minimum> found = new ArrayList<>();
        for (double[] start : starts(parameters)) {
            found.add(SaddleFreeNewton.minimise(criterion, start));
        }
        Minimum best = lower(found);
        if (settledValues(found).anyMatch(value -> value - best.value() > SAME_OPTIMUM)) {
            cautions.add(Caution.SEVERAL_OPTIMA);
        }
        Minimum last = best;
        if (!best.converged() || parameters.mayCreep(best.at())) {
            last = lower(List.of(SaddleFreeNewton.minimise(criterion, parameters.folded(best.at())), best));
        }
        if (!last.converged()) {
            cautions.add(Caution.NOT_CONVERGED);
        }
        return new Minimum(parameters.tidy(last.at()), last.value(), last.converged());
    }

    private List<double[]> starts(NestedParameters parameters) {
        Stream<double[]> starts = Arrays.stream(STARTS).map(start -> parameters.start(start[0], start[1]));
        if (rooms.size() < ROOMS_FOR_ONE_START) {
            return starts.toList();
        }
        return near.flatMap(fit -> fit.start(parameters))
                .map(List::of)
                .orElseGet(() -> starts.limit(1).toList());
    }

    /** The lowest, of equal ones the first. */
    private static Minimum lower(List<Minimum> found) {
        return found.stream()
                .filter(minimum -> !Double.isNaN(minimum.value()))
                .reduce((a, b) -> b.value() < a.value() ? b : a)
                .orElse(found.get(0));
    }

    private static Stream<Double> settledValues(List<Minimum> found) {
        return found.stream().filter(Minimum::converged).map(Minimum::value);
    }
}
