package org.tableweather.analyzers.standard.statistics;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.ejml.data.DMatrixRMaj;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton.Minimum;

/**
 * A fitted {@link NestedModel}. Immutable. Columns are counted as given, the constant as 0.
 *
 * <p>No standard error or variance here includes the uncertainty of the variances; the degrees of freedom do.
 *
 * @source Henderson1975
 */
public final class NestedFit implements NestedOutcome {

    /** Below this share of the residual's a session standard deviation is zero. */
    private static final double SESSION_ZERO = 1e-8;
    /** The same for a room effect over the spread of its column. */
    private static final double ROOM_ZERO = 1e-6;
    /** What must be left of L₂₂ for the correlation to be inside its bounds. */
    private static final double CORRELATION_BOUND = 1e-4;
    /** Wiggles that use fewer degrees of freedom than this are none. */
    private static final double STRAIGHT = 1e-4;
    /** A τ below this is as good as zero. */
    private static final double LEAST_SMOOTHING = 1e-7;

    private final NestedModel model;
    private final FitColumns columns;
    private final Minimum minimum;
    private final int evaluations;
    private final double sigma2;
    private final OptionalDouble sessionVariance;
    private final double[] factor;
    final double[][] omega;
    final double[] coefficients;
    final double[] inverse;
    final double responseCentre;
    /** As fitted, response less its mean. */
    final NestedData data;
    /** Per room P, m × m by rows. */
    final double[] rests;

    private final double[] effective;
    private final double[] smoothing;
    private final int[][] entries;
    private final Satterthwaite satterthwaite;
    private final Optional<KenwardRoger> kenwardRoger;
    private final List<RoomEffect> rooms;
    private final List<double[][]> crossRests;
    private final Set<Caution> cautions;

    /**
     * A figure with its uncertainty.
     *
     * @param value in the response's unit
     * @param standardError in the same
     * @param df Satterthwaite's degrees of freedom, as computed: below 1 in hopeless cases
     */
    public record Quantity(double value, double standardError, double df) {}

    /**
     * What is particular to a room, shrunken towards none.
     *
     * @param key of the room
     * @param effects u, in the order of {@link NestedFit#random()}
     * @param variance conditional variance of u given b, q × q
     * @param sessions the effects of its sessions, in their order; empty without a session effect
     */
    public record RoomEffect(String key, double[] effects, double[][] variance, List<SessionEffect> sessions) {}

    /**
     * What is particular to a session.
     *
     * @param effect w
     * @param variance conditional variance of w given b
     */
    public record SessionEffect(double effect, double variance) {}

    NestedFit(
            NestedModel model,
            FitColumns columns,
            List<RoomSessions> from,
            NestedCriterion criterion,
            Minimum minimum,
            Set<Caution> cautions) {
        this.model = model;
        this.columns = columns;
        this.minimum = minimum;
        criterion.moveTo(minimum.at());
        sigma2 = criterion.sigma2;
        data = criterion.data;
        responseCentre = data.responseCentre;
        rests = criterion.reduction.rests.clone();
        effective = criterion.top.effective.clone();
        smoothing = new double[effective.length];
        for (int group = 0; group < smoothing.length; group++) {
            smoothing[group] = criterion.parameters.smooth(minimum.at(), group);
        }
        entries = criterion.parameters.entries();
        coefficients = criterion.top.coefficients.clone();
        coefficients[0] += responseCentre;
        inverse = criterion.top.inverse.clone();
        factor = criterion.reduction.factor.clone();
        omega = omega(factor, columns.random().size());
        double t = criterion.parameters.session(minimum.at());
        boolean sessionEffect = criterion.parameters.first() > 0;
        sessionVariance =
                sessionEffect ? OptionalDouble.of(zeroed(t, SESSION_ZERO) * t * sigma2) : OptionalDouble.empty();
        RoomReader reader = new RoomReader(criterion, omega, sessionEffect, t * t);
        rooms = new ArrayList<>();
        crossRests = new ArrayList<>();
        for (int room = 0; room < from.size(); room++) {
            rooms.add(reader.read(from.get(room).key(), room));
            crossRests.add(reader.crossRest(room));
        }
        this.cautions = EnumSet.noneOf(Caution.class);
        this.cautions.addAll(cautions);
        noteBounds(criterion, t, sessionEffect);
        satterthwaite = new Satterthwaite(criterion, minimum.at());
        evaluations = criterion.evaluations;
        kenwardRoger = Optional.empty();
    }

    private NestedFit(NestedFit other, KenwardRoger precision) {
        model = other.model;
        columns = other.columns;
        minimum = other.minimum;
        evaluations = other.evaluations;
        sigma2 = other.sigma2;
        sessionVariance = other.sessionVariance;
        factor = other.factor;
        omega = other.omega;
        coefficients = other.coefficients;
        inverse = other.inverse;
        responseCentre = other.responseCentre;
        data = other.data;
        rests = other.rests;
        effective = other.effective;
        smoothing = other.smoothing;
        entries = other.entries;
        satterthwaite = other.satterthwaite;
        rooms = other.rooms;
        crossRests = other.crossRests;
        cautions = other.cautions;
        kenwardRoger = Optional.of(precision);
    }

    /**
     * The same fit with Kenward and Roger's standard errors and degrees of freedom of contrasts. Those of a room, known or
     * new, keep Satterthwaite's degrees of freedom.
     *
     * @return empty when it is not defined here: a penalised curve, the full likelihood, or an adjusted covariance that is
     *     none, as in very small pools
     * @source Kenward1997
     */
    public Optional<NestedFit> withKenwardRoger() {
        if (!smoothingFree() || model.method() != NestedModel.Method.REML) {
            return Optional.empty();
        }
        KenwardRoger precision = KenwardRoger.of(this, entries);
        double[] intercept = new double[coefficients.length];
        intercept[0] = 1;
        boolean sound = precision.isSound() && Double.isFinite(precision.df(intercept));
        return sound ? Optional.of(new NestedFit(this, precision)) : Optional.empty();
    }

    /** Where a search with other parameters begins that expects variances like these; empty when they are not the same. */
    Optional<double[]> start(NestedParameters parameters) {
        double t = Math.sqrt(sessionVariance.orElse(0) / sigma2);
        return parameters.start(t, sessionVariance.isPresent(), factor, smoothing);
    }

    /** Whether there is no penalised curve. */
    boolean smoothingFree() {
        return smoothing.length == 0;
    }

    /** Degrees of freedom that a penalised group uses: 0 for none of its wiggles, their number for all of them, free. */
    public double effectiveDf(int group) {
        return effective[group];
    }

    /** Variance τ² of a penalised group's coefficients. */
    public double smoothVariance(int group) {
        return sigma2 * smoothing[group] * smoothing[group];
    }

    /** Adds 1/τ² to the diagonal of penalised columns: next to infinity where τ is zero. */
    void addPenalty(DMatrixRMaj products) {
        for (int group = 0; group < smoothing.length; group++) {
            for (int column : model.smooths().get(group)) {
                int at = columns.position(column);
                double tau = Math.max(smoothing[group], LEAST_SMOOTHING);
                products.add(at, at, 1 / (tau * tau));
            }
        }
    }

    /** Position in the fit of a given column, or −1. */
    int position(int column) {
        return columns.position(column);
    }

    /** A row over the given columns at those of the fit. */
    double[] reduced(double[] row) {
        return columns.reduce(row);
    }

    /** Random columns by their position in the fit. */
    int[] randomPositions() {
        return columns.randomPositions();
    }

    private static double zeroed(double value, double bound) {
        return Math.abs(value) < bound ? 0 : value;
    }

    private static double[][] omega(double[] factor, int depth) {
        double[][] omega = new double[depth][depth];
        for (int i = 0; i < depth; i++) {
            for (int j = 0; j < depth; j++) {
                for (int k = 0; k <= Math.min(i, j); k++) {
                    omega[i][j] += factor[i * depth + k] * factor[j * depth + k];
                }
            }
        }
        return omega;
    }

    private void noteBounds(NestedCriterion criterion, double t, boolean sessionEffect) {
        if (sessionEffect && zeroed(t, SESSION_ZERO) == 0) {
            cautions.add(Caution.SESSION_ZERO);
        }
        for (double used : effective) {
            if (used < STRAIGHT) {
                cautions.add(Caution.CURVE_STRAIGHT);
            }
        }
        int depth = omega.length;
        boolean anyZero = false;
        for (int u = 0; u < depth; u++) {
            double size = Math.sqrt(omega[u][u]) * criterion.data.rms[criterion.reduction.random[u]];
            anyZero |= size < ROOM_ZERO;
            if (size < ROOM_ZERO) {
                cautions.add(Caution.ROOM_ZERO);
            }
        }
        if (depth == 2 && !anyZero && model.covariance() == NestedModel.Covariance.FREE) {
            double left = criterion.reduction.factor[3] * criterion.data.rms[criterion.reduction.random[1]];
            if (Math.abs(left) < CORRELATION_BOUND) {
                cautions.add(Caution.CORRELATION_AT_BOUND);
            }
        }
    }

    /** −2 log likelihood at the optimum, restricted or not, with all constants. */
    public double criterion() {
        return minimum.value();
    }

    /** Number of evaluations of the criterion, those for degrees of freedom included. */
    public int evaluations() {
        return evaluations;
    }

    /** Whether the search settled. */
    public boolean converged() {
        return minimum.converged();
    }

    /** What a reader must know. */
    public Set<Caution> cautions() {
        return Collections.unmodifiableSet(cautions);
    }

    /** Columns left out because the constant and those before determine them. */
    public List<Integer> dropped() {
        return columns.dropped();
    }

    /** Columns with a room effect in this fit. */
    public List<Integer> random() {
        return columns.random();
    }

    /** Residual variance s². */
    public double sigma2() {
        return sigma2;
    }

    /** Variance of the session effect; empty when it is not in the model or cannot be told from others. */
    public OptionalDouble sessionVariance() {
        return sessionVariance;
    }

    /** Covariance Σ of the room effects, in the order of {@link #random()}. */
    public double[][] roomCovariance() {
        double[][] covariance = new double[omega.length][omega.length];
        for (int i = 0; i < omega.length; i++) {
            for (int j = 0; j < omega.length; j++) {
                covariance[i][j] = sigma2 * omega[i][j];
            }
        }
        return covariance;
    }

    /** Correlation of two room effects; empty unless there are two, both with a variance, and it is free. */
    public OptionalDouble correlation() {
        if (omega.length != 2
                || cautions.contains(Caution.ROOM_ZERO)
                || model.covariance() == NestedModel.Covariance.DIAGONAL) {
            return OptionalDouble.empty();
        }
        double rho = omega[1][0] / Math.sqrt(omega[0][0] * omega[1][1]);
        boolean bound = cautions.contains(Caution.CORRELATION_AT_BOUND);
        return OptionalDouble.of(bound ? Math.signum(rho) : Math.max(-1, Math.min(1, rho)));
    }

    /** Rooms in the order given. */
    public List<RoomEffect> rooms() {
        return Collections.unmodifiableList(rooms);
    }

    /** A coefficient; empty when its column was dropped. */
    public Optional<Quantity> coefficient(int column) {
        if (columns.position(column) < 0) {
            return Optional.empty();
        }
        double[] row = new double[columns.given()];
        row[column] = 1;
        return Optional.of(contrast(row));
    }

    /**
     * A linear combination of the coefficients, as a point of the population curve or a difference of two.
     *
     * @param row over all given columns, constant first; dropped columns count as zero
     */
    public Quantity contrast(double[] row) {
        double[] l = columns.reduce(row);
        return kenwardRoger
                .map(precision -> new Quantity(value(l), precision.standardError(l), precision.df(l)))
                .orElseGet(() -> new Quantity(value(l), Math.sqrt(sigma2 * form(l)), satterthwaite.df(l)));
    }

    /** Of a row at the columns of the fit. */
    double value(double[] l) {
        double value = 0;
        for (int i = 0; i < l.length; i++) {
            value += l[i] * coefficients[i];
        }
        return value;
    }

    /** Covariance of two coefficients that are both in the fit. */
    public double covariance(int i, int j) {
        return sigma2 * inverse[columns.position(i) * coefficients.length + columns.position(j)];
    }

    /**
     * The same linear combination in a room that is not yet known: value as of the population, variance
     * {@code l'Cl + z'Σz}, degrees of freedom by Satterthwaite's formula for that sum, at least {@code (rooms − 2)/q} with q room
     * effects: the formula can fall to 1 where Σ is hardly known, and with one room effect rooms − 2 is the accepted number.
     *
     * @param row over all given columns
     * @source Higgins2009
     */
    public Quantity inNewRoom(double[] row) {
        Quantity population = contrast(row);
        double[] l = columns.reduce(row);
        double[] z =
                columns.random().stream().mapToDouble(column -> row[column]).toArray();
        double own = 0;
        for (int i = 0; i < z.length; i++) {
            for (int j = 0; j < z.length; j++) {
                own += z[i] * omega[i][j] * z[j];
            }
        }
        double shared = kenwardRoger.isEmpty()
                ? sigma2 * (form(l) + own)
                : population.standardError() * population.standardError() + sigma2 * own;
        double least = (rooms.size() - 2.0) / Math.max(1, z.length);
        double df = Math.max(satterthwaite.df(l, z), least);
        return new Quantity(population.value(), Math.sqrt(shared), df);
    }

    /**
     * The same linear combination in one of the rooms: value {@code x'b + z'u}, standard error with the uncertainty of b,
     * {@code s² (z'Kz + d'P[x,x]⁻¹d)}, {@code d = x − (Ω P[r,x])'z}; degrees of freedom those of the population's.
     *
     * @param room position in {@link #rooms()}
     * @param row over all given columns
     */
    public Quantity inRoom(int room, double[] row) {
        Quantity population = contrast(row);
        RoomEffect effect = rooms.get(room);
        double[][] cross = crossRests.get(room);
        double[] d = columns.reduce(row);
        double value = population.value();
        double variance = 0;
        for (int u = 0; u < omega.length; u++) {
            double z = row[columns.random().get(u)];
            value += z * effect.effects()[u];
            for (int v = 0; v < omega.length; v++) {
                variance += z * effect.variance()[u][v] * row[columns.random().get(v)];
                for (int i = 0; i < d.length; i++) {
                    d[i] -= z * omega[u][v] * cross[v][i];
                }
            }
        }
        return new Quantity(value, Math.sqrt(variance + sigma2 * form(d)), population.df());
    }

    private double form(double[] l) {
        double form = 0;
        for (int i = 0; i < l.length; i++) {
            for (int j = 0; j < l.length; j++) {
                form += l[i] * inverse[i * l.length + j] * l[j];
            }
        }
        return form;
    }
}
