package org.tableweather.analyzers.host;

import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.schema.reference.Reference;
import org.tableweather.schema.reference.References;

/** Describes analyzers in Markdown, from nothing but what each says of itself, its sources spelled out. */
public final class AnalyzerPage {

    private AnalyzerPage() {}

    /**
     * What a host shows of one analyzer.
     *
     * @param analyzer what it says of itself
     * @param sources its references, spelled out; keys that are not known here are left out
     */
    public record Explained(AnalyzerInfo analyzer, List<Reference> sources) {}

    /** An analyzer's words with its sources. */
    public static Explained explained(AnalyzerInfo info) {
        return new Explained(
                info,
                info.references().stream()
                        .flatMap(key -> References.byKey(key).stream())
                        .toList());
    }

    /** One page for all, in the order given: a table of the questions, then a part for each. */
    public static String of(Collection<Analyzer<?>> analyzers) {
        List<AnalyzerInfo> infos = analyzers.stream().map(Analyzer::info).toList();
        StringBuilder page = new StringBuilder("# Analyzers\n\n");
        page.append(
                "Made by `tableweather analyze --explain` from what each analyzer says of itself; not edited by hand.\n\n");
        page.append("| analyzer | question |\n| --- | --- |\n");
        for (AnalyzerInfo info : infos) {
            page.append("| [`" + info.id() + "`](#" + info.id() + ") | " + cell(info.question()) + " |\n");
        }
        infos.forEach(info -> page.append('\n').append(of(info)));
        return page.toString();
    }

    /** One analyzer: question, method, assumptions, when it declines, parameters, columns, sources. */
    public static String of(AnalyzerInfo info) {
        StringBuilder page = new StringBuilder("## " + info.id() + "\n\n");
        page.append("**" + info.question() + "**\n\n");
        page.append(info.title() + ", version " + info.version() + ", summary " + info.summaryVersion() + ".\n\n");
        page.append("**Method.** " + info.method() + "\n");
        list(page, "Assumptions", info.assumptions());
        list(page, "Declines, with the reason, when it finds", info.declines());
        parameters(page, info.parameters());
        if (!info.columns().isEmpty()) {
            page.append("\n**Columns it reads:** "
                    + info.columns().stream().map(column -> "`" + column + "`").collect(Collectors.joining(", "))
                    + ".\n");
        }
        list(
                page,
                "Sources",
                info.references().stream().map(AnalyzerPage::source).toList());
        return page.toString();
    }

    private static void list(StringBuilder page, String heading, List<String> lines) {
        if (!lines.isEmpty()) {
            page.append("\n**" + heading + ":**\n\n");
            lines.forEach(line -> page.append("- " + line + "\n"));
        }
    }

    private static void parameters(StringBuilder page, List<ParameterInfo> parameters) {
        if (parameters.isEmpty()) {
            return;
        }
        page.append("\n| parameter | meaning | unit | when not set | allowed |\n| --- | --- | --- | --- | --- |\n");
        for (ParameterInfo parameter : parameters) {
            String allowed =
                    parameter.allowed().stream().map(value -> "`" + value + "`").collect(Collectors.joining(", "));
            page.append("| `" + parameter.name() + "` | " + cell(parameter.meaning()) + " | "
                    + (parameter.unit().equals("1") ? "" : parameter.unit()) + " | "
                    + (parameter.standard().isEmpty() ? "" : "`" + parameter.standard() + "`") + " | " + allowed
                    + " |\n");
        }
    }

    private static String cell(String text) {
        return text.replace("|", "\\|");
    }

    private static String source(String key) {
        return References.byKey(key)
                .map(reference -> "`" + key + "` (" + reference.kind() + "): " + reference.citation()
                        + reference.doi().map(doi -> " doi:" + doi + ".").orElse("")
                        + reference.note().map(note -> " Seen: " + note + ".").orElse(""))
                .orElse("`" + key + "`");
    }
}
