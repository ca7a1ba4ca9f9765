package org.tableweather.analyzers.standard.catalogue.agreement;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.tableweather.analyzers.standard.statistics.interlab.CochranTest;
import org.tableweather.analyzers.standard.statistics.interlab.Consistency;
import org.tableweather.analyzers.standard.statistics.interlab.GrubbsTest;
import org.tableweather.analyzers.standard.statistics.interlab.Verdict;

/** Tests as data. */
final class AgreementFacts {

    /** Chance that a consistent room exceeds a bound of h or k. */
    static final double ALPHA = 0.005;

    private AgreementFacts() {}

    static Map<String, Object> of(CochranTest test) {
        return row(List.of(test.label()), test.c(), test.critical5Pct(), test.critical1Pct(), test.verdict());
    }

    static Map<String, Object> of(GrubbsTest test) {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("high", of(test.high()));
        facts.put("low", of(test.low()));
        test.twoHigh().ifPresent(pair -> facts.put("twoHigh", of(pair)));
        test.twoLow().ifPresent(pair -> facts.put("twoLow", of(pair)));
        return facts;
    }

    private static Map<String, Object> of(GrubbsTest.Suspect suspect) {
        return row(
                suspect.labels(),
                suspect.statistic(),
                suspect.critical5Pct(),
                suspect.critical1Pct(),
                suspect.verdict());
    }

    private static Map<String, Object> row(
            List<String> rooms, double statistic, double five, double one, Verdict verdict) {
        Map<String, Object> row = new LinkedHashMap<>();
        row.put("rooms", rooms);
        row.put("statistic", statistic);
        row.put("critical5Pct", five);
        row.put("critical1Pct", one);
        row.put("verdict", verdict.name().toLowerCase(Locale.ROOT));
        return row;
    }

    static Map<String, Object> of(Consistency consistency) {
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("criticalH", consistency.criticalH(ALPHA));
        consistency.criticalK(ALPHA).ifPresent(k -> facts.put("criticalK", k));
        List<Map<String, Object>> rows = new ArrayList<>();
        for (Consistency.Statistic one : consistency.laboratories()) {
            Map<String, Object> row = new LinkedHashMap<>();
            row.put("room", one.label());
            row.put("h", one.h());
            one.k().ifPresent(k -> row.put("k", k));
            rows.add(row);
        }
        facts.put("rooms", rows);
        return facts;
    }
}
