package org.tableweather.analyzers.standard.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.schema.geometry.MirrorImage;
import org.tableweather.schema.geometry.MirrorPath;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.Rail;

/** A rail that neither takes nor grips reflects as a mirror does. */
class MirrorPathTest {

    private static final RailProperties LOSSLESS = new RailProperties(RestitutionLaw.constant(1), 0, 0.27, 0);

    private static List<RailImpact> models() {
        return List.of(new ClosedFormImpact(LOSSLESS), new SteppedImpact(LOSSLESS));
    }

    private static BallRun run(TableSize table, RailImpact model) {
        return new BallRun(table, new Ball(table.ballDiameterM(), 0.16), ClothFriction.NONE, model);
    }

    /** Source: the path laid out over mirrored tables is straight; the reducer's own geometry, by another way. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6})
    void followsTheMirrorImage(int rails) {
        Random random = new Random(rails);
        TableSize table = TableSize.REFERENCE;
        for (int i = 0; i < 200; i++) {
            TablePoint from = new TablePoint(0.2 + 2 * random.nextDouble(), 0.2 + 0.8 * random.nextDouble());
            TablePoint to = new TablePoint(from.xM() + random.nextGaussian(), from.yM() + random.nextGaussian());
            MirrorPath expected = new MirrorImage(table).shoot(from, to, rails + 1);
            if (expected instanceof MirrorPath.Found path) {
                for (RailImpact model : models()) {
                    BallState sent = BallState.sent(from, to, 2, 1, 0, Ball.POOL);
                    compare(path, run(table, model).toRails(sent, rails + 1));
                }
            }
        }
    }

    private static void compare(MirrorPath.Found expected, BallPath found) {
        List<PathEvent> contacts = found.contacts();
        assertThat(found.rails().subList(0, expected.rails().size())).isEqualTo(expected.rails());
        for (int i = 0; i < contacts.size(); i++) {
            TablePoint at = contacts.get(i).after().place();
            assertThat(at.xM()).isEqualTo(expected.points().get(i + 1).xM(), within(1e-12));
            assertThat(at.yM()).isEqualTo(expected.points().get(i + 1).yM(), within(1e-12));
        }
    }

    /** Source: similar triangles: from (0.3, 0.4) to (0.9, 0.5) off the near rail, reflecting one radius inside, x is 0.56441 m. */
    @Test
    void banksOffOneRail() {
        double r = TableSize.REFERENCE.ballRadiusM();
        double x = 0.3 + 0.6 * (0.4 - r) / (0.4 - r + 0.5 - r);
        for (RailImpact model : models()) {
            BallState sent = BallState.sent(new TablePoint(0.3, 0.4), new TablePoint(x, r), 1, 1, 0, Ball.POOL);
            BallPath path = run(TableSize.REFERENCE, model).toRails(sent, 2);
            BallState off = path.contacts().get(0).after();

            assertThat(path.rails().get(0)).isEqualTo(Rail.NEAR);
            assertThat(off.xM()).isEqualTo(0.56441, within(1e-5));
            assertThat(off.xM() + off.vxMps() / off.vyMps() * (0.5 - r)).isEqualTo(0.9, within(1e-12));
        }
    }
}
