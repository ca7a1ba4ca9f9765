package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.catalogue.path.UnknownDirection.Group;
import org.tableweather.analyzers.standard.catalogue.rail.PooledRail;
import org.tableweather.analyzers.standard.numeric.SymmetricEigen;
import org.tableweather.analyzers.standard.physics.ClothFriction;
import org.tableweather.analyzers.standard.physics.RailImpact;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.analyzers.standard.statistics.nonlinear.NonlinearFit;

/**
 * One pattern in one room: where it lands for given coefficients of rail and cloth, and in which directions these are unknown.
 *
 * <p>What is not known is a sum of independent directions, each of unit variance: the rail's coefficients by the factor of their covariance;
 * the room, for a new one by the standard deviations of rooms, for one with pairs by the covariance of its effects; the session of each
 * climate; the cloth.
 */
final class PathModel {

    final PooledRail rail;
    final Pattern pattern;
    final double noseSine;
    /** Of the room, with its effects where it has pairs. */
    final double[] coefficients;

    final ClothRange knownCloth;
    final double[] cloth;
    private final Optional<NonlinearFit.Room> own;

    PathModel(
            PooledRail rail, Pattern pattern, double noseSine, Optional<NonlinearFit.Room> own, ClothRange knownCloth) {
        this.knownCloth = knownCloth;
        cloth = knownCloth.means();
        this.rail = rail;
        this.pattern = pattern;
        this.noseSine = noseSine;
        this.own = own;
        coefficients = rail.fit().coefficients().clone();
        own.ifPresent(room -> add(rail.roomColumns(), room.effects()));
    }

    private void add(int[] columns, double[] effects) {
        for (int i = 0; i < columns.length; i++) {
            coefficients[columns[i]] += effects[i];
        }
    }

    boolean inOwnRoom() {
        return own.isPresent();
    }

    /** Rooms less one. */
    double df() {
        return Math.max(1, rail.rooms().size() - 1.0);
    }

    RailProperties rail(ModelClimate climate) {
        return rail.rail(coefficients, climate.x(), climate.t(), noseSine);
    }

    Trace trace(ModelClimate climate) {
        return trace(pattern, climate, coefficients, ClothRange.cloth(cloth));
    }

    Trace trace(Pattern other, ModelClimate climate) {
        return trace(other, climate, coefficients, ClothRange.cloth(cloth));
    }

    Trace trace(List<RailImpact> inOrder) {
        return Trace.of(pattern, ClothRange.cloth(cloth), new RailsInOrder(inOrder));
    }

    /** The landing for other coefficients; NaN when there is none. */
    double landing(ModelClimate climate, double[] others, double[] otherCloth) {
        return trace(pattern, climate, others, ClothRange.cloth(otherCloth)).landingDia();
    }

    private Trace trace(Pattern other, ModelClimate climate, double[] others, ClothFriction otherCloth) {
        RailProperties properties = rail.rail(others, climate.x(), climate.t(), noseSine);
        return Trace.of(other, otherCloth, rail.impact(properties));
    }

    /** Everything but sessions, which differ between climates. */
    List<UnknownDirection> shared() {
        List<UnknownDirection> all = new ArrayList<>();
        directions(
                all, Group.RAIL, every(coefficients.length), factor(rail.fit().covariance()));
        all.addAll(room());
        for (int i = 0; i < ClothRange.COUNT; i++) {
            double[] move = new double[ClothRange.COUNT];
            move[i] = knownCloth.deviation(i);
            all.add(new UnknownDirection(Group.CLOTH, new double[coefficients.length], move, i));
        }
        return all;
    }

    private List<UnknownDirection> room() {
        List<UnknownDirection> all = new ArrayList<>();
        double[][] factor = own.map(room -> factor(room.covariance()))
                .orElseGet(() -> diagonal(rail.fit().roomDeviations()));
        directions(all, Group.ROOM, rail.roomColumns(), factor);
        return all;
    }

    List<UnknownDirection> session() {
        List<UnknownDirection> all = new ArrayList<>();
        directions(
                all, Group.SESSION, rail.sessionColumns(), diagonal(rail.fit().sessionDeviations()));
        return all;
    }

    private void directions(List<UnknownDirection> all, Group group, int[] columns, double[][] factor) {
        for (int j = 0; j < columns.length; j++) {
            double[] move = new double[coefficients.length];
            double size = 0;
            for (int i = 0; i < columns.length; i++) {
                move[columns[i]] = factor[i][j];
                size += Math.abs(factor[i][j]);
            }
            if (size > 0) {
                all.add(new UnknownDirection(group, move, new double[ClothRange.COUNT], UnknownDirection.NO_CLOTH));
            }
        }
    }

    private static int[] every(int count) {
        return java.util.stream.IntStream.range(0, count).toArray();
    }

    private static double[][] diagonal(double[] deviations) {
        double[][] factor = new double[deviations.length][deviations.length];
        for (int i = 0; i < deviations.length; i++) {
            factor[i][i] = deviations[i];
        }
        return factor;
    }

    /** F of {@code FF' = covariance}, also where some effect has no variance. */
    private static double[][] factor(double[][] covariance) {
        SymmetricEigen eigen = SymmetricEigen.of(covariance);
        double[][] factor = new double[covariance.length][covariance.length];
        for (int i = 0; i < factor.length; i++) {
            for (int j = 0; j < factor.length; j++) {
                factor[i][j] = eigen.vectors()[j][i] * Math.sqrt(Math.max(0, eigen.values()[j]));
            }
        }
        return factor;
    }
}
