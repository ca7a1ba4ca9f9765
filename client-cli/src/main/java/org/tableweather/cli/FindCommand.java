package org.tableweather.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
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
        description = "Lists what a server holds, filtered by shot, room, time and climate.",
        footer = {
            "",
            "Examples:",
            "  tableweather find rooms",
            "  tableweather find sessions --shot kick-3-rail --rh-from 55",
            "  tableweather find trials --room elm --from 2026-01-01 --all --csv > trials.csv"
        })
final class FindCommand extends Subcommand {
    private static final int BUFFER = 1 << 16;

    enum What {
        ROOMS,
        SESSIONS,
        TRIALS
    }

    @Parameters(
            paramLabel = "WHAT",
            converter = WhatConverter.class,
            completionCandidates = WhatCandidates.class,
            description = "One of: rooms, sessions, trials.")
    private What what;

    @Option(names = "--shot", paramLabel = "ID", description = "With this shot.")
    private String shot;

    @Option(names = "--kind", paramLabel = "KIND", description = "With this kind of trial: rebound, bank, kick ...")
    private String kind;

    @Option(
            names = "--room",
            paramLabel = "ROOM",
            description = "In this room: its key, or its id where it is the only one.")
    private String room;

    @Option(names = "--from", paramLabel = "TIME", description = "Not before: 2026-01-12, or 2026-01-12T18:05:00Z.")
    private String from;

    @Option(names = "--to", paramLabel = "TIME", description = "Before.")
    private String to;

    @Option(names = "--rh-from", paramLabel = "PCT", description = "At least this relative humidity, %%.")
    private String rhFrom;

    @Option(names = "--rh-to", paramLabel = "PCT", description = "At most this relative humidity, %%.")
    private String rhTo;

    @Option(names = "--temp-from", paramLabel = "C", description = "At least this temperature, deg C.")
    private String tempFrom;

    @Option(names = "--temp-to", paramLabel = "C", description = "At most this temperature, deg C.")
    private String tempTo;

    @Option(
            names = "--limit",
            paramLabel = "N",
            defaultValue = "100",
            description = "At most so many rows; standard: ${DEFAULT-VALUE}.")
    private long limit;

    @Option(names = "--all", description = "All rows, however many.")
    private boolean all;

    @ArgGroup
    private Format format = new Format();

    @Mixin
    private ServerOptions server;

    static final class Format {
        @Option(names = "--json", description = "Print JSON.")
        private boolean json;

        @Option(names = "--csv", description = "Print CSV.")
        private boolean csv;
    }

    @Override
    public Integer call() throws Exception {
        if (limit < 1) {
            throw Failure.usage("--limit " + limit + " is less than 1", "ask for at least one row, or --all");
        }
        ServerClient client = server.client();
        ServerList list = new ServerList(client, what.name().toLowerCase(Locale.ROOT), filter(client));
        boolean more = format.csv ? printCsv(list) : format.json ? printJson(list) : printTable(list);
        if (more) {
            say("there are more: --limit N, or --all");
        }
        return ExitCodes.DONE;
    }

    private Map<String, String> filter(ServerClient client) throws IOException {
        Map<String, String> filter = new LinkedHashMap<>();
        put(filter, "shot", shot);
        put(filter, "kind", kind);
        put(filter, "room", room == null ? null : RoomKey.of(room, client));
        put(filter, "from", from);
        put(filter, "to", to);
        put(filter, "rhFrom", rhFrom);
        put(filter, "rhTo", rhTo);
        put(filter, "tempFrom", tempFrom);
        put(filter, "tempTo", tempTo);
        return filter;
    }

    private static void put(Map<String, String> filter, String name, String value) {
        if (value != null) {
            filter.put(name, value);
        }
    }

    private long most() {
        return all ? Long.MAX_VALUE : limit;
    }

    private boolean printTable(ServerList list) throws IOException {
        FoundTable table = FoundTable.of(what);
        boolean more = list.read(most(), table::add);
        print(table.text());
        return more;
    }

    private boolean printJson(ServerList list) throws IOException {
        print("{\"" + list.name() + "\" : [");
        String[] before = {"\n"};
        boolean more = list.read(most(), row -> {
            print(before[0] + row.toString());
            before[0] = ",\n";
        });
        print("\n]}\n");
        return more;
    }

    // the server streams CSV; without a limit it sends everything
    private boolean printCsv(ServerList list) throws IOException {
        if (!all && limit > ServerList.PAGE) {
            throw Failure.usage(
                    "--limit " + limit + " is more than a server gives of CSV at once, " + ServerList.PAGE,
                    "ask for fewer rows, or --all");
        }
        Map<String, String> query = new LinkedHashMap<>(list.filter());
        if (!all) {
            query.put("limit", Long.toString(limit));
        }
        try (BufferedReader rows = new BufferedReader(
                new InputStreamReader(list.server().stream(list.path(), query, "text/csv"), StandardCharsets.UTF_8))) {
            char[] buffer = new char[BUFFER];
            for (int read = rows.read(buffer); read >= 0; read = rows.read(buffer)) {
                print(new String(buffer, 0, read));
            }
        }
        return false;
    }

    static final class WhatCandidates implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Arrays.stream(What.values())
                    .map(one -> one.name().toLowerCase(Locale.ROOT))
                    .iterator();
        }
    }

    static final class WhatConverter implements ITypeConverter<What> {
        @Override
        public What convert(String text) {
            return Arrays.stream(What.values())
                    .filter(one -> one.name().equalsIgnoreCase(text))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException(
                            "'" + text + "' cannot be found: name one of rooms, sessions, trials"));
        }
    }
}
