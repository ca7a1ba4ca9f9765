package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.HumidityMeasure;
import org.tableweather.analyzers.standard.catalogue.SessionTraits;
import org.tableweather.analyzers.standard.catalogue.rail.RailPool.Used;
import org.tableweather.analyzers.standard.catalogue.rail.RailSummary.Column;
import org.tableweather.analyzers.standard.physics.PublishedRange;
import org.tableweather.analyzers.standard.physics.RailImpact;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.analyzers.standard.physics.RestitutionLaw;
import org.tableweather.analyzers.standard.statistics.nonlinear.NonlinearFit;

/** The rail that {@code rail-model} fits to a pool, as a prediction needs it: coefficients, their covariance, how rooms and sessions vary. */
public final class PooledRail {

    private final FittedRail fitted;
    private final double fastestMps;

    private PooledRail(FittedRail fitted) {
        this.fitted = fitted;
        fastestMps = fastestMps(fitted);
    }

    /**
     * Fits all pairs of a pool.
     *
     * @param measure what is taken for humidity
     * @param stepped whether the stepped impact is fitted
     * @param rail what to do with it
     * @param none what to do when the pool tells none; its words say why and what would help
     */
    public static <R> R of(
            List<SessionSummary<RailSummary>> sessions,
            HumidityMeasure measure,
            boolean stepped,
            Function<? super PooledRail, ? extends R> rail,
            Function<? super Declined, ? extends R> none) {
        RailPool pool = new RailPool(sessions, new RailQuestion(Optional.empty(), measure, stepped));
        RailRefusal refusal = new RailRefusal(pool, new Parameters(new TreeMap<>()), List.of());
        return fit(pool, refusal, fitted -> rail.apply(new PooledRail(fitted)), none);
    }

    static <R> R fit(
            RailPool pool,
            RailRefusal refusal,
            Function<? super FittedRail, ? extends R> rail,
            Function<? super Declined, ? extends R> none) {
        Optional<Declined> empty = refusal.ofPool();
        if (empty.isPresent()) {
            return none.apply(empty.get());
        }
        RailDesign design = new RailDesign(pool);
        Optional<Declined> poor = refusal.ofDesign(design);
        if (poor.isPresent()) {
            return none.apply(poor.get());
        }
        return FittedRail.of(pool, design)
                .fold(
                        fitted -> refusal.ofUntold(fitted).<R>map(none).orElseGet(() -> rail.apply(fitted)),
                        refused -> none.apply(refusal.of(refused)));
    }

    /** The fit; its rooms' and sessions' effects are added to the coefficients at {@link #roomColumns} and {@link #sessionColumns}. */
    public NonlinearFit fit() {
        return fitted.fit;
    }

    /** Coefficients that vary between rooms. */
    public int[] roomColumns() {
        return fitted.design.roomColumns();
    }

    /** Coefficients that vary between sessions. */
    public int[] sessionColumns() {
        return fitted.design.sessionColumns();
    }

    /** A room with pairs. */
    public Optional<NonlinearFit.Room> room(String key) {
        return fitted.fit.rooms().stream()
                .filter(room -> room.label().equals(key))
                .findFirst();
    }

    /** Keys of the rooms with pairs. */
    public List<String> rooms() {
        return List.copyOf(fitted.pool.rooms);
    }

    /**
     * The rail in a climate.
     *
     * @param coefficients of the fit, with what a room and a session add
     * @param x humidity in the measure's steps from its origin
     * @param t temperature, (T − 21 °C)/5 K
     * @param noseSine of the table
     */
    public RailProperties rail(double[] coefficients, double x, double t, double noseSine) {
        double[][] rows = fitted.design.rows(x, t, 1);
        RailProperties plain = RailResponse.rail(dot(rows[0], coefficients), dot(rows[1], coefficients), noseSine);
        if (!fitted.has(RailTerm.RESTITUTION_SPEED)) {
            return plain;
        }
        double perMps = coefficients[fitted.design.place(RailTerm.RESTITUTION_SPEED)];
        RestitutionLaw law = new RestitutionLaw(dot(rows[0], coefficients), perMps, fastestMps);
        return new RailProperties(law, plain.friction(), noseSine, PublishedRange.CLOTH_SLIDING.typical);
    }

    /** The impact that was fitted, on a rail. */
    public RailImpact impact(RailProperties rail) {
        return RailResponse.impact(rail, fitted.pool.question.stepped());
    }

    private static double dot(double[] row, double[] coefficients) {
        double sum = 0;
        for (int i = 0; i < row.length; i++) {
            sum += row[i] * coefficients[i];
        }
        return sum;
    }

    /** The fastest pair across the rail, m/s: beyond it restitution is not followed further. */
    private static double fastestMps(FittedRail fitted) {
        return fitted.pool.used.stream()
                .filter(Used::withSpeed)
                .mapToDouble(used -> fitted.design.response(used).acrossMps())
                .max()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** Scatter of an attempt's rebound angle, degrees. */
    public double angleSdDeg() {
        return fitted.scatter.angleSd();
    }

    /** Scatter of speed off over speed on; what is assumed where it was not measured. */
    public double ratioSd() {
        return Double.isNaN(fitted.scatter.ratioSd()) ? PairScatter.ASSUMED_RATIO_SD : fitted.scatter.ratioSd();
    }

    /** Whether temperature is in the model. */
    public boolean feelsTemperature() {
        return fitted.has(RailTerm.FRICTION_TEMPERATURE);
    }

    /** The driest condition, %RH. */
    public double lowestPct() {
        return fitted.pool.lowestPct();
    }

    /** The dampest condition, %RH. */
    public double highestPct() {
        return fitted.pool.highestPct();
    }

    /** The coldest and the warmest condition, °C. */
    public double[] temperaturesC() {
        return new double[] {
            fitted.pool.used.stream()
                    .mapToDouble(used -> used.cell().mean(Column.TEMP_C))
                    .min()
                    .orElse(Double.NaN),
            fitted.pool.used.stream()
                    .mapToDouble(used -> used.cell().mean(Column.TEMP_C))
                    .max()
                    .orElse(Double.NaN)
        };
    }

    /** Cloth and bed of the pool, for measures of humidity that need them. */
    public SessionTraits typical() {
        return fitted.pool.typical;
    }

    /** What went in, for an answer's facts. */
    public SortedMap<String, Object> facts() {
        SortedMap<String, Object> facts = new TreeMap<>();
        facts.put("pairs", fitted.pool.pairs);
        facts.put("rooms", fitted.pool.rooms.size());
        facts.put("sessions", fitted.pool.sessions.size());
        return facts;
    }

    /** What a reader must know of the pairs and of the fit. */
    public List<String> warnings() {
        return RailWarnings.of(fitted);
    }
}
