package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/** {@code tableweather find}. */
@Command(
        name = "find",
        description = "Lists or counts what a server holds, by shot, room, time, climate, table, cloth and more.",
        footer = {
            "",
            "Examples:",
            "  tableweather find rooms",
            "  tableweather find sessions --shot kick-3-rail --rh-from 55",
            "  tableweather find summary --country NO --dew-point-from 12",
            "  tableweather find trials --room elm --from 2026-01-01 --all --csv > trials.csv",
            "  tableweather find trials --shot kick-3-rail --format parquet --output kicks.parquet",
            "  tableweather find summary --shot kick-3-rail --rh-from 55 --save damp-kicks --token-file my-token",
            "  tableweather find trials --query damp-kicks"
        })
final class FindCommand extends Subcommand {
    private static final int BUFFER = 1 << 16;
    private static final long USUAL = 100;

    enum What {
        ROOMS,
        SESSIONS,
        TRIALS,
        SUMMARY,
        QUERIES;

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        static String words() {
            return Arrays.stream(values()).map(What::word).collect(Collectors.joining(", "));
        }
    }

    enum Form {
        JSON,
        CSV,
        NDJSON,
        PARQUET
    }

    @Parameters(
            paramLabel = "WHAT",
            converter = WhatConverter.class,
            completionCandidates = WhatCandidates.class,
            description = "One of: rooms, sessions, trials; summary, which counts trials; queries, which are saved.")
    private What what;

    @Mixin
    private FindFilter filter;

    @Option(
            names = "--limit",
            paramLabel = "N",
            description = "At most so many rows; standard: 100, and all with --output.")
    private Long limit;

    @Option(names = "--all", description = "All rows, however many.")
    private boolean all;

    @ArgGroup
    private Format format = new Format();

    @Option(
            names = "--output",
            paramLabel = "FILE",
            description = "Write into this file, whole or not at all, and replace it when it is there.")
    private Path output;

    @Option(names = "--save", paramLabel = "NAME", description = "Save the filter on the server under this name.")
    private String save;

    @Option(names = "--delete", paramLabel = "NAME", description = "With queries: delete a query of yours.")
    private String delete;

    @Mixin
    private ServerOptions server;

    static final class Format {
        @Option(names = "--json", description = "Print JSON.")
        private boolean json;

        @Option(names = "--csv", description = "Print CSV.")
        private boolean csv;

        @Option(
                names = "--format",
                paramLabel = "FORM",
                converter = FormConverter.class,
                description = "json, csv; trials also ndjson, parquet.")
        private Form form;

        /** The form asked for; null for a table to look at. */
        private Form chosen() {
            if (form != null) {
                return form;
            }
            return csv ? Form.CSV : json ? Form.JSON : null;
        }
    }

    @Override
    public Integer call() throws Exception {
        Form form = format.chosen();
        mustFit(form);
        ServerClient client = server.client();
        if (delete != null) {
            client.header("DELETE", SavedQueries.path(delete), Map.of(), SavedQueries.NO_BODY, "ETag");
            say("deleted the query " + delete);
            return ExitCodes.DONE;
        }
        Map<String, String> parameters = filter.parameters(client);
        if (save != null) {
            say("saved as " + SavedQueries.save(client, save, parameters) + "; use it with --query");
        }
        ServerList list = new ServerList(client, what.word(), parameters);
        boolean more = form == Form.CSV || form == Form.NDJSON || form == Form.PARQUET
                ? stream(list, form)
                : form == Form.JSON ? writeJson(list) : printTable(list);
        if (more) {
            say("there are more: --limit N, or --all");
        }
        return ExitCodes.DONE;
    }

    private void mustFit(Form form) {
        if (limit != null && limit < 1) {
            throw Failure.usage("--limit " + limit + " is less than 1", "ask for at least one row, or --all");
        }
        if ((form == Form.NDJSON || form == Form.PARQUET) && what != What.TRIALS) {
            throw Failure.usage(
                    "--format " + word(form) + " is for trials, not for " + what.word(), "choose json or csv");
        }
        if (form == Form.CSV && (what == What.SUMMARY || what == What.QUERIES)) {
            throw Failure.usage("there is no CSV of " + what.word(), "choose json");
        }
        if (form == Form.PARQUET && output == null) {
            throw Failure.usage("Parquet is no text to print", "name a file: --output trials.parquet");
        }
        if (output != null && form == null) {
            throw Failure.usage("--output " + output + " needs a form", "add --format json, csv, ndjson or parquet");
        }
        if (output != null) {
            OutputFile.mustBePossible(output);
        }
        if (delete != null && what != What.QUERIES) {
            throw Failure.usage(
                    "--delete is for queries, not for " + what.word(), "tableweather find queries --delete NAME");
        }
    }

    private static String word(Form form) {
        return form.name().toLowerCase(Locale.ROOT);
    }

    private long most() {
        if (limit != null && !all) {
            return limit;
        }
        return all || output != null ? Long.MAX_VALUE : USUAL;
    }

    private boolean printTable(ServerList list) throws IOException {
        if (what == What.SUMMARY) {
            JsonNode summary = list.server().get(SummaryText.PATH, list.filter());
            print(SummaryText.of(summary));
            hint(list, summary.path("trials").asLong());
            return false;
        }
        FoundTable table = FoundTable.of(what);
        boolean more = list.read(most(), table::add);
        print(table.text());
        hint(list, table.rows());
        return more;
    }

    /** A shot that the server has never seen is a misspelt one more often than not. */
    private void hint(ServerList list, long found) throws IOException {
        String shot = list.filter().get("shot");
        if (found > 0 || shot == null) {
            return;
        }
        String known =
                SummaryText.names(list.server().get(SummaryText.PATH, Map.of()).path("shots"));
        if (!(", " + known + ", ").contains(", " + shot + ", ")) {
            say("the server has no trial of the shot " + shot + "; it has " + (known.isEmpty() ? "none yet" : known));
        }
    }

    private boolean writeJson(ServerList list) throws IOException {
        if (what == What.SUMMARY) {
            String text = list.server().get(SummaryText.PATH, list.filter()).toPrettyString() + "\n";
            write(out -> out.accept(text));
            return false;
        }
        boolean[] more = {false};
        write(out -> {
            out.accept("{\"" + list.name() + "\" : [");
            String[] before = {"\n"};
            more[0] = list.read(most(), row -> {
                out.accept(before[0] + row.toString());
                before[0] = ",\n";
            });
            out.accept("\n]}\n");
        });
        return more[0];
    }

    private void write(OutputFile.Texts texts) throws IOException {
        if (output == null) {
            texts.writeTo(this::print);
        } else {
            OutputFile.write(output, texts);
        }
    }

    // the server streams these; without a limit it sends everything
    private boolean stream(ServerList list, Form form) throws IOException {
        long most = most();
        boolean everything = most == Long.MAX_VALUE;
        if (!everything && most > ServerList.PAGE) {
            throw Failure.usage(
                    "--limit " + most + " is more than a server streams at once, " + ServerList.PAGE,
                    "ask for fewer rows, or --all");
        }
        Map<String, String> query = new LinkedHashMap<>(list.filter());
        query.put("format", word(form));
        if (!everything) {
            query.put("limit", Long.toString(most));
        }
        try (InputStream body = list.server().stream(list.path(), query, "*/*")) {
            if (output != null) {
                OutputFile.copy(output, body);
                return false;
            }
            Reader rows = new InputStreamReader(body, StandardCharsets.UTF_8);
            char[] buffer = new char[BUFFER];
            for (int read = rows.read(buffer); read >= 0; read = rows.read(buffer)) {
                print(new String(buffer, 0, read));
            }
        }
        return false;
    }

    static final class FormConverter implements ITypeConverter<Form> {
        @Override
        public Form convert(String text) {
            return Arrays.stream(Form.values())
                    .filter(one -> word(one).equalsIgnoreCase(text))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException("'" + text + "' is no form: name one of "
                            + Arrays.stream(Form.values())
                                    .map(FindCommand::word)
                                    .collect(Collectors.joining(", "))));
        }
    }

    static final class WhatCandidates implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Arrays.stream(What.values()).map(What::word).iterator();
        }
    }

    static final class WhatConverter implements ITypeConverter<What> {
        @Override
        public What convert(String text) {
            return Arrays.stream(What.values())
                    .filter(one -> one.name().equalsIgnoreCase(text))
                    .findFirst()
                    .orElseThrow(() ->
                            new TypeConversionException("'" + text + "' cannot be found: name one of " + What.words()));
        }
    }
}
