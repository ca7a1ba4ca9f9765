package org.tableweather.cli;

import java.util.List;
import java.util.Locale;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.check.SessionCaution;

/** Cautions as a person reads them. */
final class CautionText {
    private CautionText() {}

    /** One line for each caution; none when the climates call for none. */
    static List<String> lines(CheckReport report) {
        return report.cautions().stream().map(CautionText::line).toList();
    }

    private static String line(SessionCaution found) {
        String others = found.sessions() == 1 ? "" : String.format(Locale.ROOT, " and %,d more", found.sessions() - 1);
        return String.format(
                Locale.ROOT,
                "%s, session %s%s: %s (%s %s; bound %s; source: %s)",
                found.caution().level().name().toLowerCase(Locale.ROOT),
                found.session(),
                others,
                found.caution().advice(),
                rounded(found.caution().value()),
                found.caution().unit(),
                rounded(found.caution().bound()),
                found.caution().reference());
    }

    private static String rounded(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
