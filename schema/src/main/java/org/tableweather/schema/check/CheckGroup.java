package org.tableweather.schema.check;

import java.util.ArrayList;
import java.util.List;

/** Makes the checks of one group and remembers them. */
final class CheckGroup {
    private final String name;
    private final List<Check> checks = new ArrayList<>();

    CheckGroup(String name) {
        this.name = name;
    }

    Check refuse(String rule, String title, String bound, String remedy, String reference) {
        return add(Severity.REFUSE, rule, title, bound, remedy, reference);
    }

    Check warn(String rule, String title, String bound, String remedy, String reference) {
        return add(Severity.WARN, rule, title, bound, remedy, reference);
    }

    Check note(String rule, String title, String bound, String remedy, String reference) {
        return add(Severity.NOTE, rule, title, bound, remedy, reference);
    }

    List<Check> checks() {
        return List.copyOf(checks);
    }

    private Check add(Severity severity, String rule, String title, String bound, String remedy, String reference) {
        Check check = new Check(name + "." + rule, severity, title, bound, remedy, reference);
        checks.add(check);
        return check;
    }
}
