package org.tableweather.schema.shots;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;

/** The reference is the mirror image: off a perfect rail the angles before and after are equal. */
class ShotCatalogueTest {
    private static final double R = ShotCatalogue.BALL_RADIUS_DIA;
    private static final double POCKET_CLEARANCE = 0.5;

    static List<Shot> all() {
        return ShotCatalogue.all();
    }

    static List<Shot> overRails() {
        return all().stream().filter(shot -> !shot.rails().isEmpty()).toList();
    }

    private static double line(Rail rail) {
        return switch (rail) {
            case NEAR, HEAD -> R;
            case FAR -> 4 - R;
            case FOOT -> 8 - R;
        };
    }

    private static boolean isLong(Rail rail) {
        return rail == Rail.NEAR || rail == Rail.FAR;
    }

    private static double[] mirrored(double[] point, Rail rail) {
        return isLong(rail)
                ? new double[] {point[0], 2 * line(rail) - point[1]}
                : new double[] {2 * line(rail) - point[0], point[1]};
    }

    /** Contacts of the straight path to the target's mirror image. */
    private static List<double[]> contacts(Shot shot) {
        double[] at = point(shot.start().orElseThrow());
        List<double[]> contacts = new ArrayList<>();
        for (int i = 0; i < shot.rails().size(); i++) {
            double[] image = point(shot.target().orElseThrow());
            for (int j = shot.rails().size() - 1; j >= i; j--) {
                image = mirrored(image, shot.rails().get(j));
            }
            Rail rail = shot.rails().get(i);
            int across = isLong(rail) ? 1 : 0;
            double share = (line(rail) - at[across]) / (image[across] - at[across]);
            assertThat(share).isBetween(0.0, 1.0);
            at = new double[] {at[0] + share * (image[0] - at[0]), at[1] + share * (image[1] - at[1])};
            contacts.add(at);
        }
        return contacts;
    }

    private static double[] point(Shot.Position position) {
        return new double[] {position.xDia(), position.yDia()};
    }

    @ParameterizedTest
    @MethodSource("overRails")
    void reachTheirTargetOffPerfectRails(Shot shot) {
        List<double[]> contacts = contacts(shot);
        double[] aim = point(shot.aim().orElseThrow());

        assertThat(contacts.get(0)[0]).isCloseTo(aim[0], within(0.002));
        assertThat(contacts.get(0)[1]).isCloseTo(aim[1], within(0.002));
        assertThat(contacts).allSatisfy(contact -> {
            assertThat(contact[0]).isBetween(R - 1e-9, 8 - R + 1e-9);
            assertThat(contact[1]).isBetween(R - 1e-9, 4 - R + 1e-9);
            for (int pocket = 0; pocket < 6; pocket++) {
                double fromPocket = Math.hypot(contact[0] - pocket % 3 * 4, contact[1] - pocket / 3 * 4);
                assertThat(fromPocket).isGreaterThan(POCKET_CLEARANCE);
            }
        });
        Rail target = shot.targetRail().orElseThrow();
        assertThat(point(shot.target().orElseThrow())[isLong(target) ? 1 : 0]).isCloseTo(line(target), within(0.001));
    }

    @ParameterizedTest
    @MethodSource("overRails")
    void stateTheirAngleOfApproach(Shot shot) {
        double[] start = point(shot.start().orElseThrow());
        double[] contact = contacts(shot).get(0);
        double along = Math.abs(contact[0] - start[0]);
        double across = Math.abs(contact[1] - start[1]);
        boolean longRail = isLong(shot.rails().get(0));

        assertThat(Math.toDegrees(longRail ? Math.atan2(along, across) : Math.atan2(across, along)))
                .isCloseTo(shot.approachAngleDeg().orElseThrow(), within(0.06));
    }

    @Test
    void coverReboundsBanksAndKicks() {
        assertThat(all()).extracting(Shot::id).doesNotHaveDuplicates().contains("rebound-45-ramp", "kick-4-rail");
        assertThat(all()).extracting(Shot::kind).contains(Kind.REBOUND, Kind.BANK, Kind.KICK);
        assertThat(ShotCatalogue.byId("kick-3-rail"))
                .map(shot -> shot.rails().size())
                .contains(3);
        assertThat(ShotCatalogue.byId("kick-9-rail")).isEmpty();
        assertThat(all()).allSatisfy(shot -> {
            assertThat(shot.title()).isPresent();
            assertThat(shot.howToLog()).isPresent();
            assertThat(shot.keepConstant()).isNotEmpty();
            assertThat(shot.delivery().isPresent()).isEqualTo(shot.kind() != Kind.HOP);
        });
    }
}
