package org.tableweather.schema.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChecksTest {

    @Test
    void haveDistinctIdsAndSayEverything() {
        assertThat(Checks.all()).hasSizeGreaterThan(60).extracting(Check::id).doesNotHaveDuplicates();
        assertThat(Checks.all()).allSatisfy(check -> {
            assertThat(check.id()).matches("[a-z]+\\.[a-z0-9]+(-[a-z0-9]+)*");
            assertThat(check.title()).endsWith(".");
            assertThat(check.bound()).isNotBlank();
            assertThat(check.remedy()).isNotBlank();
            assertThat(check.reference()).isNotBlank();
        });
    }

    @Test
    void areFoundById() {
        assertThat(Checks.byId("units.humidity-range")).contains(UnitChecks.HUMIDITY);
        assertThat(Checks.byId("units.nothing")).isEmpty();
    }

    /** Bounds from second-hand copies of specifications must not refuse anything. */
    @Test
    void onlyWarnWhereASpecificationWasNotSeenItself() {
        assertThat(Checks.all())
                .filteredOn(check -> check.id().startsWith("equipment.")
                        && !check.reference().equals("CommonPractice"))
                .isNotEmpty()
                .noneMatch(check -> check.severity() == Severity.REFUSE);
    }

    /** ORCID's page on the structure of the identifier names the first; the others are public examples in packages that check iDs. */
    @ParameterizedTest
    @ValueSource(strings = {"0000-0002-1825-0097", "0000-0001-5109-3700", "0000-0002-1694-233X"})
    void acceptValidOrcids(String orcid) {
        assertThat(IdentityChecks.isOrcid(orcid)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"0000-0002-1825-0079", "0000-0002-1694-2330", "0000000218250097", "", "0000-0002-1825-009x"})
    void refuseMistypedOrcids(String orcid) {
        assertThat(IdentityChecks.isOrcid(orcid)).isFalse();
    }
}
