package org.tableweather.schema.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.record.Kind;

class KindOutcomesTest {

    @Test
    void coverEveryKindInOrder() {
        assertThat(KindOutcomes.all()).extracting(KindOutcomes::kind).containsExactly(Kind.values());
        assertThat(KindOutcomes.all()).allSatisfy(kind -> {
            assertThat(kind.description()).isNotBlank();
            assertThat(kind.needsOneOf()).isNotEmpty().doesNotContainAnyElementsOf(kind.optional());
            assertThat(kind.optional()).doesNotHaveDuplicates();
        });
    }

    /** Every measured column is some kind's, and every uncertainty is that of a column. */
    @Test
    void leaveNoMeasuredColumnOver() {
        Set<TrialColumn> used = new HashSet<>();
        KindOutcomes.all().forEach(kind -> {
            used.addAll(kind.needsOneOf());
            used.addAll(kind.optional());
            used.addAll(kind.uncertainties());
        });

        assertThat(TrialColumn.all())
                .filteredOn(column -> column.isNumber() && column.standard() == column)
                .filteredOn(column -> column != TrialColumn.TEMP_C && column != TrialColumn.RH_PCT)
                .allMatch(used::contains);
    }

    @Test
    void haveAnUncertaintyInTheUnitOfTheQuantity() {
        assertThat(KindOutcomes.of(Kind.HOP).uncertainties())
                .containsExactlyInAnyOrder(
                        TrialColumn.HOP_HEIGHT_U_MM, TrialColumn.APPROACH_SPEED_U_MPS, TrialColumn.REBOUND_SPEED_U_MPS);
        for (TrialColumn column : TrialColumn.all()) {
            column.uncertainty().ifPresent(u -> {
                assertThat(u.unit()).isEqualTo(column.standard().unit());
                assertThat(u.min()).isZero();
            });
        }
        assertThat(TrialColumn.uncertainties()).hasSize(13);
    }
}
