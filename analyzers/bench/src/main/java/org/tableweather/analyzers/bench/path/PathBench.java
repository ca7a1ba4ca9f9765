package org.tableweather.analyzers.bench.path;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.tableweather.analyzers.standard.physics.Ball;
import org.tableweather.analyzers.standard.physics.BallPath;
import org.tableweather.analyzers.standard.physics.BallRun;
import org.tableweather.analyzers.standard.physics.BallState;
import org.tableweather.analyzers.standard.physics.ClosedFormImpact;
import org.tableweather.analyzers.standard.physics.ClothFriction;
import org.tableweather.analyzers.standard.physics.RailImpact;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.analyzers.standard.physics.RestitutionLaw;
import org.tableweather.analyzers.standard.physics.SteppedImpact;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;

/**
 * The shot {@code kick-4-rail} of the catalogue, rolling, over its four rails and on to the fifth contact, on which its landing is read;
 * rails of restitution 0.85 and friction 0.2.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class PathBench {

    private static final int CONTACTS = 5;

    private final BallState start;
    private final BallRun closedForm;
    private final BallRun stepped;

    /** Lays out the shot on the reference table. */
    public PathBench() {
        TableSize table = TableSize.REFERENCE;
        Shot shot = ShotCatalogue.byId("kick-4-rail").orElseThrow();
        RailProperties rail =
                new RailProperties(RestitutionLaw.constant(0.85), 0.2, RailProperties.POOL_NOSE_SINE, 0.2);
        start = BallState.sent(
                table.point(shot.start().orElseThrow()),
                table.point(shot.aim().orElseThrow()),
                shot.approachSpeedMps().orElseThrow(),
                1,
                0,
                Ball.POOL);
        closedForm = run(table, new ClosedFormImpact(rail));
        stepped = run(table, new SteppedImpact(rail));
    }

    private static BallRun run(TableSize table, RailImpact impact) {
        return new BallRun(table, Ball.POOL, ClothFriction.TYPICAL, impact);
    }

    /** Model (a). */
    @Benchmark
    public BallPath closedForm() {
        return closedForm.toRails(start, CONTACTS);
    }

    /** Model (b). */
    @Benchmark
    public BallPath stepped() {
        return stepped.toRails(start, CONTACTS);
    }
}
