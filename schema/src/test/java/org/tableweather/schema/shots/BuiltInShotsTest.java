package org.tableweather.schema.shots;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.schema.equipment.PublishedTable;
import org.tableweather.schema.equipment.PublishedTables;
import org.tableweather.schema.geometry.MarkingError;
import org.tableweather.schema.geometry.MirrorImage;
import org.tableweather.schema.geometry.MirrorPath;
import org.tableweather.schema.geometry.NominalPath;
import org.tableweather.schema.geometry.PathReducer;
import org.tableweather.schema.geometry.PathReduction;
import org.tableweather.schema.geometry.PocketMouths;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;

class BuiltInShotsTest {

    /** The widest mouths of any specification seen: 5⅛ in and 5⅝ in (older pool rules, second-hand). */
    private static final PocketMouths WIDEST = new PocketMouths(0.130175, 0.142875);

    /** Shots that are meant to end in a pocket. */
    private static final Set<String> POCKETED = Set.of("bank-1-rail-side");

    static Stream<Arguments> railShotsOnTables() {
        List<Arguments> pairs = new ArrayList<>();
        for (Shot shot : BuiltInShots.all()) {
            for (PublishedTable table : PublishedTables.all()) {
                if (!shot.rails().isEmpty()) {
                    pairs.add(Arguments.of(shot.id(), table.id()));
                }
            }
        }
        return pairs.stream();
    }

    private static MirrorPath.Found nominal(Shot shot, TableSize table) {
        MirrorPath path = NominalPath.of(shot, table);
        assertThat(path).as(shot.id()).isInstanceOf(MirrorPath.Found.class);
        return (MirrorPath.Found) path;
    }

    private static TableSize size(String tableId) {
        return PublishedTables.byId(tableId).orElseThrow().size();
    }

    @Test
    void coverEveryKindAndTheAnglesAndNumbersOfRails() {
        List<Shot> shots = BuiltInShots.all();
        assertThat(shots).hasSizeGreaterThanOrEqualTo(12);
        assertThat(shots.stream().map(Shot::kind).collect(Collectors.toSet())).isEqualTo(Set.of(Kind.values()));
        Map<String, Double> rebounds = shots.stream()
                .filter(shot -> shot.kind() == Kind.REBOUND)
                .collect(Collectors.toMap(
                        Shot::id, shot -> shot.approachAngleDeg().orElseThrow()));
        assertThat(rebounds)
                .containsAllEntriesOf(Map.of(
                        "rebound-30-ramp", 30.0,
                        "rebound-45-ramp", 45.0,
                        "rebound-60-ramp", 60.0,
                        "rebound-30-cue", 30.0,
                        "rebound-45-cue", 45.0,
                        "rebound-60-cue", 60.0));
        assertThat(shots.stream()
                        .filter(shot -> shot.kind() == Kind.KICK)
                        .map(shot -> shot.rails().size()))
                .contains(2, 3, 4, 5, 6);
        assertThat(shots.stream()
                        .filter(shot -> shot.kind() == Kind.BANK)
                        .map(shot -> shot.rails().size()))
                .contains(2, 3);
    }

    @Test
    void sayWhatToKeepConstantAndHowToLog() {
        for (Shot shot : BuiltInShots.all()) {
            assertThat(shot.title()).as(shot.id()).isPresent();
            assertThat(shot.keepConstant()).as(shot.id()).hasSizeGreaterThanOrEqualTo(3);
            assertThat(shot.howToLog().orElse("")).as(shot.id()).containsIgnoringCase("every attempt");
            assertThat(shot.howToLog().orElse("").length()).as(shot.id()).isLessThanOrEqualTo(2000);
        }
    }

    /** Source: mirror image: the rails in their order, the target at the end, on every published size of table. */
    @ParameterizedTest(name = "{0} on {1}")
    @MethodSource("railShotsOnTables")
    void meetTheirRailsInOrderAndLandOnTheTarget(String shotId, String tableId) {
        Shot shot = BuiltInShots.byId(shotId);
        TableSize table = size(tableId);
        MirrorPath.Found path = nominal(shot, table);
        assertThat(path.rails()).isEqualTo(shot.rails());
        // Shot again from the aim alone: the same rails, and the target rail at the end.
        List<TablePoint> points = path.points();
        MirrorPath.Found again = (MirrorPath.Found) new MirrorImage(table)
                .shoot(points.get(0), points.get(1), shot.rails().size() + 1);
        assertThat(again.rails()).isEqualTo(shot.rails());
        TablePoint end = again.points().get(again.points().size() - 1);
        TablePoint target = table.heldTo(
                shot.targetRail().orElseThrow(), table.point(shot.target().orElseThrow()));
        assertThat(end.distanceM(target)).isLessThan(1e-9);
    }

    /** Source: fields against the mirror image on the reference table, and what the documentation says of the others. */
    @ParameterizedTest(name = "{0} on {1}")
    @MethodSource("railShotsOnTables")
    void printTheAimAndAngleOfTheReferenceTable(String shotId, String tableId) {
        Shot shot = BuiltInShots.byId(shotId);
        boolean reference = tableId.equals("pool-9ft");
        TableSize table = size(tableId);
        MirrorPath.Found path = nominal(shot, table);
        Rail first = shot.rails().get(0);
        boolean shortRail = first == Rail.HEAD || first == Rail.FOOT;
        Shot.Position contact = table.diamonds(path.contact(0));
        Shot.Position aim = shot.aim().orElseThrow();
        double off = shortRail ? contact.yDia() - aim.yDia() : contact.xDia() - aim.xDia();
        assertThat(off).isCloseTo(0, within(reference ? 0.00051 : 0.05));
        assertThat(path.approachAngleDeg(0))
                .isCloseTo(shot.approachAngleDeg().orElseThrow(), within(reference ? 0.051 : 0.5));
    }

    /** Source: pocket mouths of the pool rules; a contact within a ball's radius of a jaw is not a rail's. */
    @ParameterizedTest(name = "{0} on {1}")
    @MethodSource("railShotsOnTables")
    void keepClearOfThePockets(String shotId, String tableId) {
        Shot shot = BuiltInShots.byId(shotId);
        TableSize table = size(tableId);
        MirrorPath.Found path = nominal(shot, table);
        List<Rail> touched = new ArrayList<>(shot.rails());
        touched.add(shot.targetRail().orElseThrow());
        int last = POCKETED.contains(shotId) ? touched.size() - 1 : touched.size();
        for (int i = 0; i < last; i++) {
            assertThat(WIDEST.clearanceM(table, touched.get(i), path.points().get(i + 1)))
                    .as("%s on %s, contact %d", shotId, tableId, i + 1)
                    .isGreaterThan(2 * table.ballRadiusM());
        }
    }

    /** Source: mirror image: equal angles, and a landing offset of nought, from marks read off the nominal path. */
    @ParameterizedTest(name = "{0} on {1}")
    @MethodSource("railShotsOnTables")
    void reduceToEqualAnglesAndNoOffset(String shotId, String tableId) {
        Shot shot = BuiltInShots.byId(shotId);
        TableSize table = size(tableId);
        MirrorPath.Found path = nominal(shot, table);
        PathReduction reduction = new PathReducer(table, MarkingError.byEye(table)).reduce(marks(path, shot), shot);
        assertThat(reduction).isInstanceOf(PathReduction.Reduced.class);
        PathReduction.Reduced figures = (PathReduction.Reduced) reduction;
        assertThat(figures.followsShot()).isTrue();
        assertThat(figures.counted()).isEqualTo(shot.rails().size());
        int lastRail = shot.rails().size() - 1;
        assertThat(figures.finalReboundAngleDeg().orElseThrow().value())
                .isCloseTo(path.approachAngleDeg(lastRail), within(1e-9));
        assertThat(figures.landing().orElseThrow().offsetDia().value()).isCloseTo(0, within(1e-9));
    }

    private static List<Contact> marks(MirrorPath.Found path, Shot shot) {
        List<Contact> contacts = new ArrayList<>();
        for (int i = 0; i < path.points().size(); i++) {
            List<Rail> touched = new ArrayList<>(shot.rails());
            touched.add(shot.targetRail().orElseThrow());
            TablePoint at = path.points().get(i);
            contacts.add(new Contact(
                    "s",
                    "1",
                    i + 1,
                    i == 0 ? Contact.Point.START : Contact.Point.RAIL,
                    i == 0 ? Optional.empty() : Optional.of(touched.get(i - 1)),
                    Double.NaN,
                    Double.NaN,
                    at.xM(),
                    at.yM(),
                    Double.NaN));
        }
        return contacts;
    }

    /** Source: geometry by hand: aimed along a line at 30° from 1.8 diamonds, the cue ball starts at 2.26, 1.10. */
    @Test
    void theThrowShotSaysWhereTheCueBallLies() {
        TableSize table = TableSize.REFERENCE;
        double ball = table.ballDiameterM() / table.diamondAlongM();
        double x = 4 - ball - 1.8 * Math.cos(Math.toRadians(30));
        double y = 2 - 1.8 * Math.sin(Math.toRadians(30));
        assertThat(x).isCloseTo(2.26, within(0.005));
        assertThat(y).isCloseTo(1.10, within(0.005));
        assertThat(String.join(" ", BuiltInShots.byId("throw-half-ball").keepConstant()))
                .contains("x 2.26, y 1.1 ");
    }

    @Test
    void areAllInTheCatalogue() {
        assertThat(ShotCatalogue.all()).containsExactlyInAnyOrderElementsOf(BuiltInShots.all());
    }

    @Test
    void useTheWordsOfTheSchema() {
        assertThat(BuiltInShots.all().stream().flatMap(shot -> shot.delivery().stream()))
                .allMatch(Arrays.asList("ramp", "cue")::contains);
    }
}
