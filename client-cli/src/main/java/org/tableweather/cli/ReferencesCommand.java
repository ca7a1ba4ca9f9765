package org.tableweather.cli;

import java.util.List;
import org.tableweather.schema.reference.Reference;
import org.tableweather.schema.reference.References;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather schema references}. */
@Command(
        name = "references",
        description = "Lists every source that checks, analyzers and docs cite, with its kind and what was seen of it.")
final class ReferencesCommand extends Subcommand {
    @Parameters(arity = "0..1", paramLabel = "KEY", description = "Only this one; not for the exports.")
    private String key;

    @ArgGroup
    private Format format = new Format();

    static final class Format {
        @Option(names = "--json", description = "Print JSON.")
        private boolean json;

        @Option(names = "--bibtex", description = "Print all as BibTeX; the field kind has the kind of source.")
        private boolean bibtex;

        @Option(names = "--csl-json", description = "Print all as CSL-JSON; custom.kind has the kind of source.")
        private boolean cslJson;
    }

    record Sources(List<Reference> references) {}

    @Override
    public Integer call() {
        if (format.bibtex) {
            print(References.bibtex());
        } else if (format.cslJson) {
            print(JsonText.of(References.cslJson()));
        } else {
            List<Reference> chosen = chosen();
            print(format.json ? JsonText.of(new Sources(chosen)) : listed(chosen));
        }
        return ExitCodes.DONE;
    }

    private List<Reference> chosen() {
        return key == null
                ? References.all()
                : List.of(References.byKey(key)
                        .orElseThrow(() -> Failure.usage(
                                "there is no source " + key, "tableweather schema references lists them")));
    }

    private static String listed(List<Reference> references) {
        StringBuilder text = new StringBuilder();
        for (Reference reference : references) {
            text.append(reference.key())
                    .append(" [")
                    .append(reference.kind())
                    .append("]\n  ")
                    .append(reference.citation())
                    .append('\n');
            reference.doi().ifPresent(doi -> text.append("  doi:").append(doi).append('\n'));
            reference
                    .note()
                    .ifPresent(note -> text.append("  seen: ").append(note).append('\n'));
        }
        return text.toString();
    }
}
