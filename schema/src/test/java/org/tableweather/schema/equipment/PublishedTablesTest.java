package org.tableweather.schema.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tableweather.schema.geometry.PocketMouths;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Rail;

class PublishedTablesTest {

    private static final double INCH = 0.0254;

    /**
     * Sources: WpaEquipment 100 × 50 and 92 × 46 in, ball 2¼ in; UmbRules 2.84 × 1.42 m, 61 to 61.5 mm; WpbsaRules 3569 ×
     * 1778 mm, 52.5 mm; CommonPractice 78 × 39 and 88 × 44 in.
     */
    @ParameterizedTest
    @CsvSource({
        "pool-9ft, 2.54, 1.27, 0.05715", "pool-8ft, 2.3368, 1.1684, 0.05715", "pool-8ft-home, 2.2352, 1.1176, 0.05715",
        "pool-7ft, 1.9812, 0.9906, 0.05715", "carom, 2.84, 1.42, 0.0615", "snooker, 3.569, 1.778, 0.0525"
    })
    void haveTheirNominalSizes(String id, double length, double width, double ball) {
        TableSize size = PublishedTables.byId(id).orElseThrow().size();
        assertThat(size.playingLengthM()).isCloseTo(length, within(1e-12));
        assertThat(size.playingWidthM()).isCloseTo(width, within(1e-12));
        assertThat(size.ballDiameterM()).isCloseTo(ball, within(1e-12));
    }

    /** Sources: tolerances ⅛ in (WpaEquipment), 5 mm (UmbRules), 13 mm (WpbsaRules). */
    @ParameterizedTest
    @CsvSource({"pool-9ft, 3.175", "pool-8ft, 3.175", "carom, 5", "snooker, 13"})
    void haveTheirTolerances(String id, double toleranceMm) {
        Specified length = PublishedTables.byId(id).orElseThrow().playingLengthMm();
        double nominal = length.nominal().orElseThrow();
        assertThat(length.allows(nominal - toleranceMm + 0.001)).isTrue();
        assertThat(length.allows(nominal + toleranceMm - 0.001)).isTrue();
        assertThat(length.allows(nominal - toleranceMm - 0.01)).isFalse();
        assertThat(length.allows(nominal + toleranceMm + 0.01)).isFalse();
    }

    /** Every figure says where it is from; nothing is taken for the standard itself. */
    @Test
    void sayHowSureTheyAre() {
        for (PublishedTable table : PublishedTables.all()) {
            assertThat(table.playingLengthMm().reference()).isNotBlank();
            assertThat(table.playingLengthMm().certainty())
                    .isEqualTo(
                            table.playingLengthMm().reference().equals("CommonPractice")
                                    ? "common-practice"
                                    : "second-hand");
        }
    }

    /** Source: WpaEquipment: nose height 62.5 to 64.5 %, 35.72 to 36.86 mm for a 57.15 mm ball; mouths 4⅝ and 5⅛ in. */
    @Test
    void haveTheRestOfTheSpecification() {
        PublishedTable nine = PublishedTables.byId("pool-9ft").orElseThrow();
        assertThat(nine.noseHeightPct().orElseThrow().lower().orElseThrow() * 57.15 / 100)
                .isCloseTo(35.72, within(0.005));
        assertThat(nine.noseHeightPct().orElseThrow().upper().orElseThrow() * 57.15 / 100)
                .isCloseTo(36.86, within(0.005));
        assertThat(nine.pockets().cornerM()).isCloseTo(4.625 * INCH, within(1e-12));
        assertThat(nine.pockets().sideM()).isCloseTo(5.125 * INCH, within(1e-12));
        assertThat(PublishedTables.byId("snooker").orElseThrow().pockets()).isEqualTo(PocketMouths.NONE);
    }

    /** Source: geometry by hand: a mouth of m at 45° takes m/√2 of each rail; the side mouth half of m on each side. */
    @Test
    void pocketsTakePartOfTheRails() {
        TableSize table = PublishedTables.byId("pool-9ft").orElseThrow().size();
        PocketMouths pockets = new PocketMouths(0.1 * Math.sqrt(2), 0.12);
        assertThat(pockets.clearanceM(table, Rail.NEAR, new TablePoint(0.3, 0.0286)))
                .isCloseTo(0.2, within(1e-12));
        assertThat(pockets.clearanceM(table, Rail.NEAR, new TablePoint(1.30, 0.0286)))
                .isCloseTo(-0.03, within(1e-12));
        assertThat(pockets.clearanceM(table, Rail.FOOT, new TablePoint(2.5, 1.0)))
                .isCloseTo(0.17, within(1e-12));
        assertThat(PocketMouths.NONE.clearanceM(table, Rail.NEAR, new TablePoint(1.27, 0.03)))
                .isCloseTo(1.27, within(1e-12));
    }

    @Test
    void giveTheBallThatIsUsualOnATable() {
        PoolTable stated = new PoolTable(
                "t",
                "r",
                OptionalDouble.of(2838),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        assertThat(PublishedTables.sizeOf(stated, Optional.empty())).contains(new TableSize(2.838, 1.419, 0.0615));
        PoolTable silent = new PoolTable(
                "t",
                "r",
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        assertThat(PublishedTables.sizeOf(silent, Optional.empty())).isEmpty();
    }
}
