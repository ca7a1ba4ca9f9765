package org.tableweather.cli;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.Checks;
import org.tableweather.schema.reference.Reference;
import org.tableweather.schema.reference.References;

/** One check in full: what it demands, why it is believed, and what to do. */
final class CheckExplanation {
    private static final int NEAR = 5;

    record Explained(Check check, Reference source) {}

    private CheckExplanation() {}

    /**
     * Explains.
     *
     * @param id of the check
     * @throws Failure when there is none; it names those that are near
     */
    static String of(String id, boolean json) throws Failure {
        Check check = Checks.byId(id).orElseThrow(() -> unknown(id));
        Reference source = References.byKey(check.reference()).orElseThrow();
        return json ? JsonText.of(new Explained(check, source)) : text(check, source);
    }

    private static String text(Check check, Reference source) {
        StringBuilder text = new StringBuilder();
        line(text, check.id(), check.title());
        line(text, "  severity", meaning(check));
        line(text, "  bound", check.bound());
        line(text, "  remedy", check.remedy());
        line(text, "  source", source.citation());
        line(text, "    kind", source.kind());
        source.doi().ifPresent(doi -> line(text, "    DOI", doi));
        source.note().ifPresent(note -> line(text, "    seen", note));
        return text.toString();
    }

    private static void line(StringBuilder text, String name, String value) {
        text.append(name).append(": ").append(value).append('\n');
    }

    private static String meaning(Check check) {
        String name = check.severity().schemaName();
        return switch (check.severity()) {
            case REFUSE -> name + ": a contribution with it is not accepted";
            case WARN -> name + ": accepted, and told to whoever uses the data";
            case NOTE -> name + ": accepted; knowing it would make the data more useful";
        };
    }

    private static Failure unknown(String id) {
        Set<String> wanted = pieces(id);
        List<String> near = Checks.all().stream()
                .map(Check::id)
                .filter(known -> shared(wanted, known) > 0)
                .sorted(Comparator.comparing((String known) -> -shared(wanted, known)))
                .limit(NEAR)
                .toList();
        String remedy = near.isEmpty() ? "tableweather checks lists all" : "near it: " + String.join(", ", near);
        return Failure.usage("no check has the id " + id, remedy);
    }

    /** Share of the pieces of either that both have. */
    private static double shared(Set<String> wanted, String known) {
        Set<String> all = pieces(known);
        int sum = all.size() + wanted.size();
        all.retainAll(wanted);
        return sum == 0 ? 0 : 2.0 * all.size() / sum;
    }

    /** Every three neighbouring letters. */
    private static Set<String> pieces(String id) {
        Set<String> pieces = new HashSet<>();
        String letters = id.replaceAll("[^a-z]", "");
        for (int i = 0; i + 3 <= letters.length(); i++) {
            pieces.add(letters.substring(i, i + 3));
        }
        return pieces;
    }
}
