package org.tableweather.server.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class TrialColumnTest {

    /** What the format lets a contributor write is stored; columns in other units are converted to these. */
    @Test
    void everyColumnOfTheFormatIsStored() {
        Set<String> stored = new TreeSet<>();
        TrialColumn.all().forEach(column -> stored.add(column.sqlName()));
        for (org.tableweather.schema.table.TrialColumn column : org.tableweather.schema.table.TrialColumn.all()) {
            boolean key = column == org.tableweather.schema.table.TrialColumn.SESSION;
            if (!key && column.standard() == column) {
                assertThat(stored).contains(column.header());
            }
        }
    }

    @Test
    void jsonNamesAreThoseOfTheRecord() {
        assertThat(TrialColumn.FINAL_REBOUND_ANGLE_DEG.jsonName()).isEqualTo("finalReboundAngleDeg");
        assertThat(TrialColumn.RUN_OUT_U_M.jsonName()).isEqualTo("runOutUM");
    }
}
