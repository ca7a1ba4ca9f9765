package org.tableweather.release;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * One who is to be cited: every contributor of a release, once.
 *
 * @param name the one they chose
 * @param orcid ORCID iD
 */
record Author(String name, Optional<String> orcid) {

    /** The authors of a release, by name. */
    static List<Author> of(Manifest manifest) {
        Map<String, Author> byKey = new TreeMap<>();
        for (Manifest.Member member : manifest.contributions()) {
            byKey.putIfAbsent(
                    member.orcid().orElse(member.contributor()), new Author(member.contributor(), member.orcid()));
        }
        return byKey.values().stream()
                .sorted(Comparator.comparing(Author::name)
                        .thenComparing(author -> author.orcid().orElse("")))
                .toList();
    }

    /** The address of the ORCID iD. */
    Optional<String> orcidAddress() {
        return orcid.map(id -> "https://orcid.org/" + id);
    }
}
