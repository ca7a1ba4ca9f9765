package org.tableweather.schema.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class FindingsTest {

    @Test
    void shortenLongValuesAndReplaceControlCharacters() {
        Finding finding = Findings.one(
                UnitChecks.HUMIDITY, Place.cell("trials.csv", 2, "rh_pct"), "a\u0007" + "x".repeat(200), "m");

        assertThat(finding.value().orElseThrow())
                .hasSize(80)
                .startsWith("a\uFFFDx")
                .endsWith("…");
    }

    @Test
    void mergeWithOthersAndKeepTheCap() {
        Findings one = new Findings();
        Findings other = new Findings();
        for (int i = 0; i < 30; i++) {
            one.add(UnitChecks.HUMIDITY, Place.row("trials.csv", i), null, () -> "m");
            other.add(UnitChecks.HUMIDITY, Place.row("trials.csv", i), null, () -> "m");
        }
        one.addAll(other);
        CheckReport report = one.report(60, 1, Map.of());

        assertThat(report.findings()).hasSize(CheckReport.KEPT_PER_CHECK);
        assertThat(report.counts()).containsEntry("units.humidity-range", 60L);
        assertThat(report.notListed()).isEqualTo(40);
        assertThat(one.count(UnitChecks.HUMIDITY)).isEqualTo(60);
        assertThat(report.isRefused()).isTrue();
    }

    @Test
    void asNotesRefuseNothing() {
        Findings findings = new Findings();
        findings.add(ClimateChecks.STATED, Place.file("trials.csv"), null, () -> "m");

        assertThat(findings.refuse()).isFalse();
        assertThat(findings.report(1, 1, Map.of()).isRefused()).isFalse();
    }
}
