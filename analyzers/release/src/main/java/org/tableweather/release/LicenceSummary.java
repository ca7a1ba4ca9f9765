package org.tableweather.release;

import java.util.List;
import java.util.Locale;

/**
 * The page {@code LICENCES.md}: what is under which licence.
 *
 * @param manifest of the release
 */
record LicenceSummary(Manifest manifest) {
    String markdown() {
        StringBuilder page =
                new StringBuilder("# Licences\n\nEvery contribution keeps its own licence; whoever uses the whole"
                        + " keeps all of them.\n\n"
                        + "| licence (SPDX) | contributions | sessions | trials |\n| --- | ---: | ---: | ---: |\n");
        for (Licence licence : Licence.of(manifest)) {
            List<Manifest.Member> under = manifest.contributions().stream()
                    .filter(member -> member.licence().equals(licence.id()))
                    .toList();
            page.append(String.format(
                    Locale.ROOT,
                    "| [%s](%s) | %d | %d | %d |%n".replace("%n", "\n"),
                    licence.id(),
                    licence.address(),
                    under.size(),
                    under.stream().mapToInt(Manifest.Member::sessions).sum(),
                    under.stream().mapToLong(Manifest.Member::trials).sum()));
        }
        page.append("\n| contribution | title | by | licence | sessions | trials |\n"
                + "| --- | --- | --- | --- | ---: | ---: |\n");
        manifest.contributions().forEach(member -> page.append(row(member)));
        return page.toString();
    }

    private static String row(Manifest.Member member) {
        return "| " + member.id() + " | " + cell(member.title().orElse("")) + " | " + cell(member.contributor())
                + member.orcid()
                        .map(orcid -> " (https://orcid.org/" + orcid + ")")
                        .orElse("") + " | "
                + member.licence() + " | " + member.sessions() + " | " + member.trials() + " |\n";
    }

    private static String cell(String text) {
        return text.replaceAll("[\\r\\n]+", " ").replace("|", "\\|");
    }
}
