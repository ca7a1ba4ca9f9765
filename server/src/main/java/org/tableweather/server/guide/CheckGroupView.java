package org.tableweather.server.guide;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.Checks;

/**
 * The checks of one group as a page shows them.
 *
 * @param name first part of their ids
 * @param checks in the catalogue's order
 */
record CheckGroupView(String name, List<CheckView> checks) {

    CheckGroupView {
        checks = List.copyOf(checks);
    }

    /**
     * One check.
     *
     * @param id {@code group.rule}
     * @param severity {@code refuse}, {@code warn} or {@code note}
     * @param title the rule in one sentence
     * @param bound in words and figures
     * @param remedy what to do
     * @param reference key of its source
     */
    record CheckView(String id, String severity, String title, String bound, String remedy, String reference) {

        static CheckView of(Check check) {
            return new CheckView(
                    check.id(),
                    check.severity().name().toLowerCase(Locale.ROOT),
                    check.title(),
                    check.bound(),
                    check.remedy(),
                    check.reference());
        }
    }

    /** All groups in the catalogue's order. */
    static List<CheckGroupView> all() {
        Map<String, List<CheckView>> groups = new LinkedHashMap<>();
        for (Check check : Checks.all()) {
            String group = check.id().substring(0, check.id().indexOf('.'));
            groups.computeIfAbsent(group, any -> new ArrayList<>()).add(CheckView.of(check));
        }
        return groups.entrySet().stream()
                .map(entry -> new CheckGroupView(entry.getKey(), entry.getValue()))
                .toList();
    }
}
