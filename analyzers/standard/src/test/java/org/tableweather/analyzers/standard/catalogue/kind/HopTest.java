package org.tableweather.analyzers.standard.catalogue.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column.HOP_HEIGHT_MM;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;
import org.tableweather.schema.record.Kind;

class HopTest extends KindContract {

    private static final GoldenFile GOLDEN = GoldenFile.read("kind/roll-out.properties");

    @Override
    protected Analyzer<KindSummary> analyzer() {
        return new Hop();
    }

    @Override
    KindLeague league() {
        return new KindLeague(Kind.HOP, 25, -0.6, 0.8, (draft, height) -> draft.with(HOP_HEIGHT_MM, height));
    }

    @Override
    double slope() {
        return -0.6;
    }

    /** From 100 mm at a restitution of 0.5 a ball rises to 25 mm; the root is in proportion to the restitution. */
    @Test
    void theRootIsInProportionToTheRestitution() {
        double drop = GOLDEN.number("bounce.drop.mm");
        for (double restitution : GOLDEN.numbers("bounce.restitution")) {
            double root = Hop.DEFINITION
                    .outcome("root_hop_height")
                    .orElseThrow()
                    .reading()
                    .of(
                            null,
                            new TrialDraft(Kind.HOP, 1)
                                    .with(HOP_HEIGHT_MM, drop * restitution * restitution)
                                    .build());
            assertThat(root / Math.sqrt(drop)).isCloseTo(restitution, within(1e-12));
        }
    }

    @Test
    void tellsTheRootBeside() {
        Estimated answer = estimated(league().drawn(12, 5, 20, 3), Map.of());

        assertThat(answer.sentence()).contains("lower when damp");
        assertThat(estimate(answer, "root-hop-height.change").upper()).isNegative();
    }
}
