package org.tableweather.schema.record;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;

/**
 * Who contributes, by the name they chose.
 *
 * @param name display name
 * @param orcid ORCID iD, {@code 0000-0002-1825-0097}
 * @param affiliation club, hall or institution
 */
public record Contributor(String name, Optional<String> orcid, Optional<String> affiliation) {

    /**
     * The name space of this contributor's rooms: the ORCID iD, or else the name in lower case with dashes.
     *
     * @return never empty
     */
    @JsonIgnore
    public String key() {
        return orcid.orElseGet(() -> {
            String plain = Normalizer.normalize(name, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
            String slug = plain.replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-+|-+$", "");
            return slug.isEmpty() ? "unnamed" : slug;
        });
    }
}
