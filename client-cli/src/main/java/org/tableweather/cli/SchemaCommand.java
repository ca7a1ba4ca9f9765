package org.tableweather.cli;

import java.util.List;
import java.util.stream.Stream;
import org.tableweather.schema.dictionary.DataDictionary;
import org.tableweather.schema.dictionary.FormatFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather schema}. */
@Command(
        name = "schema",
        description = "Prints what the open format is made of: without a NAME, lists it.",
        subcommands = {ShotsCommand.class, ChecksCommand.class, ReferencesCommand.class})
final class SchemaCommand extends Subcommand {
    private static final String DICTIONARY = "dictionary";

    @Parameters(
            arity = "0..1",
            paramLabel = "NAME",
            description =
                    "contribution, session or shot (JSON Schema); trials, climate or contacts (CSVW); kinds; tables;"
                            + " dictionary (every field, as Markdown).")
    private String name;

    @Option(names = "--json", description = "Print the list as JSON.")
    private boolean json;

    record Part(String name, String file, String description) {}

    record Parts(List<Part> schema) {}

    @Override
    public Integer call() {
        if (name == null) {
            print(json ? JsonText.of(new Parts(parts())) : listed());
        } else if (name.equals(DICTIONARY)) {
            print(DataDictionary.markdown());
        } else {
            print(FormatFile.of(name).orElseThrow(() -> unknown(name)).text());
        }
        return ExitCodes.DONE;
    }

    private static Failure unknown(String name) {
        return Failure.usage(
                "the format has no part " + name,
                "choose one of: "
                        + String.join(", ", parts().stream().map(Part::name).toList()));
    }

    private static List<Part> parts() {
        return Stream.concat(
                        Stream.of(FormatFile.values())
                                .map(file -> new Part(file.title(), file.path(), file.description())),
                        Stream.of(
                                new Part(DICTIONARY, "DICTIONARY.md", "every field with unit, bounds and example"),
                                new Part("shots", "shots/*.json", "the built-in test shots"),
                                new Part("checks", "", "every check with its bound and source"),
                                new Part("references", "references.bib", "every source, also as BibTeX or CSL-JSON")))
                .toList();
    }

    private static String listed() {
        TextTable table = TextTable.of("name", "file", "what");
        parts().forEach(part -> table.row(part.name(), part.file(), part.description()));
        return table.text();
    }
}
