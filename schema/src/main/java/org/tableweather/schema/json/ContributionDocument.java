package org.tableweather.schema.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.tableweather.schema.check.ContributionRules;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;
import org.tableweather.schema.record.Contribution;

/**
 * What {@code contribution.json} turned out to say.
 *
 * @param contribution empty when it could not be understood at all
 * @param shotIds ids of own shots, also of those that could not be understood
 */
public record ContributionDocument(Optional<Contribution> contribution, Set<String> shotIds) {
    private static final int MAX_BYTES = 32 << 20;

    /** Nothing was said. */
    public static final ContributionDocument NOTHING = new ContributionDocument(Optional.empty(), Set.of());

    /**
     * Reads and checks.
     *
     * @param in the file
     * @param findings takes all that is wrong with it
     * @throws IOException when it cannot be read
     */
    public static ContributionDocument read(InputStream in, Findings findings) throws IOException {
        byte[] bytes = in.readNBytes(MAX_BYTES + 1);
        if (bytes.length > MAX_BYTES) {
            findings.add(
                    StructureChecks.JSON,
                    Place.file(ContributionJson.FILE),
                    null,
                    () -> "the file is larger than 32 MiB");
            return NOTHING;
        }
        JsonNode tree = ContributionJson.parse(bytes, findings);
        if (tree.isMissingNode()) {
            return NOTHING;
        }
        Optional<Contribution> contribution =
                new RecordBinder(findings).bind(Contribution.class, tree, SchemaDocument.contribution(), "");
        contribution.ifPresent(content -> ContributionRules.check(content, findings));
        return new ContributionDocument(contribution, shotIds(tree));
    }

    private static Set<String> shotIds(JsonNode tree) {
        Set<String> ids = new HashSet<>();
        tree.path("shots").forEach(shot -> ids.add(shot.path("id").asText("")));
        return ids;
    }
}
