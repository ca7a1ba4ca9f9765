package org.tableweather.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Contributor;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.table.ClimateColumn;
import org.tableweather.schema.table.Column;
import org.tableweather.schema.table.KindOutcomes;
import org.tableweather.schema.table.TrialColumn;

/**
 * A folder to be filled in: valid at once, with example rows that say so; of the equipment it states nothing.
 *
 * @param shot the test shot
 * @param sessions how many
 * @param attempts in each session
 * @param name of the contributor
 * @param room what the room is called
 * @param licence SPDX id
 */
record NewFolder(Shot shot, int sessions, int attempts, String name, String room, String licence) {
    /** Stands where the contributor's name belongs. */
    static final String NAMELESS = "WRITE YOUR NAME HERE";

    /** What is in it. */
    static final List<String> FILES = List.of("contribution.json", "trials.csv", "climate.csv", "README.txt");

    private static final String TABLE = "t1";
    private static final String BALLS = "b1";
    private static final String LOGGER = "h1";
    static final OffsetDateTime EXAMPLE_DAY = OffsetDateTime.parse("2025-01-06T14:00:00+01:00");

    /** Writes it: all of it, or nothing. */
    void write(Path folder) throws IOException {
        new FolderDraft(FILES, this::fill).write(folder);
    }

    private void fill(Path folder) throws IOException {
        Contribution contribution = contribution();
        try (ContributionWriter writer = ContributionWriter.into(folder, contribution)) {
            for (int i = 0; i < contribution.sessions().size(); i++) {
                Session session = contribution.sessions().get(i);
                ExampleRows.writeTrials(writer, session, shot, attempts);
                ExampleRows.writeClimate(writer, session, attempts, 30 + 10 * (i % 5));
            }
        }
        Files.writeString(folder.resolve("README.txt"), readme());
    }

    private Contribution contribution() {
        return contribution(
                room,
                room + ", " + shot.id(),
                name,
                licence,
                IntStream.rangeClosed(1, sessions).mapToObj(this::session).toList());
    }

    /** One room, table, ball set and logger, of which nothing is stated, and these sessions. */
    static Contribution contribution(String room, String title, String name, String licence, List<Session> sessions) {
        String roomId = slug(room);
        OptionalDouble unknown = OptionalDouble.empty();
        return new Contribution(
                "1.0",
                Optional.of(title),
                licence,
                Optional.of(true),
                new Contributor(name, Optional.empty(), Optional.empty()),
                List.of(new Room(roomId, Optional.of(room), Optional.empty(), unknown, unknown, unknown, List.of())),
                List.of(new PoolTable(
                        TABLE, roomId, unknown, unknown, Optional.empty(), Optional.empty(), Optional.empty())),
                List.of(new BallSet(BALLS, Optional.empty(), unknown, unknown, Optional.empty(), Optional.empty())),
                List.of(),
                List.of(new Instrument(
                        LOGGER,
                        Optional.empty(),
                        List.of("temperature", "humidity"),
                        unknown,
                        unknown,
                        unknown,
                        unknown,
                        List.of())),
                List.of(),
                sessions);
    }

    private Session session(int number) {
        OffsetDateTime settledFrom = EXAMPLE_DAY.plusDays(7L * (number - 1));
        return session(
                "s" + number,
                settledFrom.toLocalDate().toString(),
                settledFrom,
                settledFrom.plusHours(4),
                shot.delivery(),
                "EXAMPLE: replace the times and what was done");
    }

    /** A session in that room, all attempts of which will be logged in an order drawn by lot. */
    static Session session(
            String id,
            String visit,
            OffsetDateTime settledFrom,
            OffsetDateTime startedAt,
            Optional<String> delivery,
            String note) {
        return new Session(
                id,
                TABLE,
                Optional.of(BALLS),
                Optional.empty(),
                Optional.of(LOGGER),
                Optional.of(visit),
                Optional.empty(),
                Optional.of(startedAt),
                Optional.of(settledFrom),
                delivery,
                Optional.of(true),
                Optional.of(true),
                Optional.empty(),
                OptionalInt.of(10),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of(note));
    }

    private List<Column> trialColumns() {
        List<Column> columns = new ArrayList<>(List.of(
                TrialColumn.SESSION, TrialColumn.TRIAL, TrialColumn.STARTED_AT, TrialColumn.KIND, TrialColumn.SHOT));
        KindOutcomes outcomes = KindOutcomes.of(shot.kind());
        columns.addAll(outcomes.needsOneOf());
        columns.addAll(outcomes.optional());
        if (!columns.contains(TrialColumn.RAILS) && !shot.rails().isEmpty()) {
            columns.add(TrialColumn.RAILS);
        }
        columns.add(TrialColumn.NOTE);
        return columns;
    }

    private static List<Column> climateColumns() {
        return List.of(
                ClimateColumn.INSTRUMENT,
                ClimateColumn.TIME,
                ClimateColumn.TEMP_C,
                ClimateColumn.RH_PCT,
                ClimateColumn.PLACEMENT);
    }

    String readme() throws IOException {
        try (InputStream template = NewFolder.class.getResourceAsStream("new-folder.txt")) {
            return new String(template.readAllBytes(), StandardCharsets.UTF_8)
                    .replace("{room}", room)
                    .replace("{shot}", shot.id())
                    .replace("{kind}", shot.kind().schemaName())
                    .replace("{title}", shot.title().orElse(shot.id()))
                    .replace("{howToLog}", shot.howToLog().orElse("Write down every attempt, made or missed."))
                    .replace(
                            "{keepConstant}",
                            shot.keepConstant().stream()
                                    .map(what -> "  - " + what)
                                    .collect(Collectors.joining("\n")))
                    .replace("{trialColumns}", ColumnNotes.of("trials", trialColumns()))
                    .replace("{climateColumns}", ColumnNotes.of("climate", climateColumns()));
        }
    }

    private static String slug(String text) {
        String slug =
                text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-+|-+$", "");
        return slug.isEmpty() ? "room" : slug;
    }
}
