package org.tableweather.analyzers.spi;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.List;

/**
 * What an analyzer says of itself.
 *
 * @param id {@code rebound-humidity}: lower case, dashes
 * @param version semver of the method: a change of any figure raises it
 * @param summaryVersion changes when a summary's content changes; part of the cache's key
 * @param title short
 * @param question in plain words
 * @param method in words, with the formula in Unicode
 * @param assumptions what must hold
 * @param declines when it answers nothing
 * @param parameters what a user may set
 * @param columns columns of {@code trials.csv} that it reads
 * @param references keys of {@code references.bib}
 */
@JsonPropertyOrder({"id", "version", "title", "question"})
public record AnalyzerInfo(
        String id,
        String version,
        String summaryVersion,
        String title,
        String question,
        String method,
        List<String> assumptions,
        List<String> declines,
        List<ParameterInfo> parameters,
        List<String> columns,
        List<String> references) {

    public AnalyzerInfo {
        assumptions = List.copyOf(assumptions);
        declines = List.copyOf(declines);
        parameters = List.copyOf(parameters);
        columns = List.copyOf(columns);
        references = List.copyOf(references);
    }
}
