package org.tableweather.analyzers.host.plugin;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis;

/** Whether an answer from outside can be passed on: it is there, its numbers are finite, and it says something. */
final class SoundAnalysis {
    private SoundAnalysis() {}

    /**
     * The same analysis.
     *
     * @throws PluginFailure that names what is wrong with it
     */
    static Analysis of(String name, Analysis analysis) {
        if (analysis == null) {
            throw new PluginFailure(name + " returned null from conclude");
        }
        JsonNode json;
        try {
            json = PluginJson.MAPPER.valueToTree(analysis);
        } catch (RuntimeException e) {
            throw new PluginFailure(name + " returned what cannot be written as JSON: " + PluginFailure.inWords(e), e);
        }
        notFinite(json, "").ifPresent(where -> {
            throw new PluginFailure(name + " returned a number that is not finite, in " + where);
        });
        String says = analysis.fold(Analysis.Estimated::sentence, Analysis.Declined::detail);
        if (says == null || says.isBlank()) {
            throw new PluginFailure(name + " returned an answer without a word");
        }
        return analysis;
    }

    private static Optional<String> notFinite(JsonNode node, String path) {
        if (node.isDouble() || node.isFloat()) {
            return Double.isFinite(node.doubleValue()) ? Optional.empty() : Optional.of(path + " = " + node.asText());
        }
        for (Map.Entry<String, JsonNode> field : node.properties()) {
            Optional<String> found =
                    notFinite(field.getValue(), path.isEmpty() ? field.getKey() : path + "." + field.getKey());
            if (found.isPresent()) {
                return found;
            }
        }
        for (int i = 0; node.isArray() && i < node.size(); i++) {
            Optional<String> found = notFinite(node.get(i), path + "[" + i + "]");
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }
}
