package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.util.List;
import java.util.stream.IntStream;
import org.tableweather.analyzers.standard.plan.StudyPlan;
import org.tableweather.schema.record.Shot;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code tableweather plan}. */
@Command(
        name = "plan",
        description = "Plans sessions that can answer the question: how sure they will be of a change, what would be"
                + " needed, in which order to run them by lot, and what to mind.",
        footer = {
            "",
            "Examples:",
            "  tableweather plan --climates 35,50,65 --attempts 20 --visits 3 --change 2",
            "  tableweather plan --climates 5 --range 30,70 --rooms 8 --trial-sd 2 --session-sd 0.5 --room-slope-sd 0.2",
            "  tableweather plan --shot kick-3-rail --shot bank-2-rail --data winter/ --sheet plan.html",
            "  tableweather plan --visits 4 --folder spring/ --name \"A. Example\""
        })
final class PlanCommand extends Subcommand {
    private static final int MOST_IN_RANGE = 20;
    /** Short enough to be typed again. */
    private static final int MOST_DRAWN_SEED = 1_000_000;

    @Option(
            names = "--shot",
            paramLabel = "ID",
            description = "A test shot, several times for several; standard: kick-3-rail.")
    private List<String> shots = List.of("kick-3-rail");

    @Option(
            names = "--climates",
            paramLabel = "PCT",
            split = ",",
            description = "Relative humidities to hold, %%, separated by commas; with --range how many; standard:"
                    + " 35,50,65.")
    private List<Double> climates = List.of(35.0, 50.0, 65.0);

    @Option(
            names = "--range",
            paramLabel = "PCT",
            split = ",",
            description = "From the driest to the dampest: --climates 5 --range 30,70 holds 30,40,50,60,70.")
    private List<Double> range = List.of();

    @Option(
            names = "--temperature",
            paramLabel = "C",
            defaultValue = "21",
            description = "Air temperature of all of them, °C; standard: ${DEFAULT-VALUE}.")
    private double tempC;

    @Option(
            names = "--attempts",
            paramLabel = "N",
            defaultValue = "20",
            description = "Attempts of each shot in each climate; standard: ${DEFAULT-VALUE}.")
    private int attempts;

    @Option(
            names = "--visits",
            paramLabel = "N",
            defaultValue = "3",
            description = "How often every climate is held; standard: ${DEFAULT-VALUE}.")
    private int visits;

    @Option(
            names = "--rooms",
            paramLabel = "N",
            defaultValue = "1",
            description = "Rooms that run the plan; standard: ${DEFAULT-VALUE}.")
    private int rooms;

    @Option(
            names = "--room-number",
            paramLabel = "K",
            defaultValue = "1",
            description = "Which of these rooms the run order is for; standard: ${DEFAULT-VALUE}.")
    private int roomNumber;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "The run order is drawn with it: same seed, same order; standard: drawn by chance, and told.")
    private Long seed;

    @Mixin
    private PlanTimes times;

    @Mixin
    private PlanScatter scatter;

    @Mixin
    private PlanCircuit circuit;

    @Option(names = "--sheet", paramLabel = "FILE", description = "Write a sheet to print and fill in (HTML).")
    private Path sheet;

    @Option(
            names = "--folder",
            paramLabel = "DIR",
            description = "Write a contribution folder with all planned sessions and attempts, to be filled in.")
    private Path folder;

    @Option(names = "--name", paramLabel = "NAME", description = "Your name, for the folder.")
    private String name = NewFolder.NAMELESS;

    @Option(names = "--room", paramLabel = "NAME", description = "What the room is called, for the folder and sheet.")
    private String room = "My room";

    @Option(
            names = "--licence",
            paramLabel = "SPDX",
            defaultValue = "CC-BY-4.0",
            description = "The licence of your data, for the folder; standard: ${DEFAULT-VALUE}.")
    private String licence;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Override
    public Integer call() throws Exception {
        List<Shot> chosen = shots.stream().map(ShotsCommand::shot).toList();
        PlanReport report = report(chosen);
        if (sheet != null) {
            write(sheet, PlanSheet.of(report, chosen, room));
        }
        if (folder != null) {
            writeFolder(new PlannedFolder(report, chosen, name, room, licence));
        }
        print(json ? JsonText.ofSchema(report) : PlanText.of(report));
        return ExitCodes.DONE;
    }

    private PlanReport report(List<Shot> chosen) throws IOException {
        PlanReport.Times when = times.times();
        StudyPlan plan = plan();
        if (roomNumber < 1 || roomNumber > rooms) {
            throw Failure.usage(
                    "--room-number " + roomNumber + " is outside 1.." + rooms, "choose within, or plan more --rooms");
        }
        return PlanReport.of(
                plan,
                roomNumber,
                seed == null ? new SecureRandom().nextInt(MOST_DRAWN_SEED) : seed,
                when,
                scatter.stated(chosen, this),
                circuit);
    }

    private StudyPlan plan() {
        List<Double> held = range.isEmpty() ? climates : spaced();
        try {
            return new StudyPlan(held, tempC, shots, attempts, visits, rooms);
        } catch (IllegalArgumentException e) {
            String[] said = e.getMessage().split(": ", 2);
            throw Failure.usage(named(said[0]), said[said.length - 1]).because(e);
        }
    }

    /** The library's words for what was typed. */
    private static String named(String message) {
        String first = message.split(" ", 2)[0];
        return switch (first) {
            case "climate" -> "--climates: " + message;
            case "shots" -> "--shot: " + message;
            default -> "--" + message;
        };
    }

    private List<Double> spaced() {
        if (range.size() != 2 || !(range.get(0) < range.get(1))) {
            throw Failure.usage(
                    "--range " + range + " is not two humidities, the drier first", "write it like --range 30,70");
        }
        double count = climates.get(0);
        if (climates.size() != 1 || count != Math.rint(count) || count < 2 || count > MOST_IN_RANGE) {
            throw Failure.usage(
                    "--climates " + climates + " is no number of climates from 2 to 20, which --range needs",
                    "write it like --climates 5 --range 30,70");
        }
        double step = (range.get(1) - range.get(0)) / (count - 1);
        return IntStream.range(0, (int) count)
                .mapToObj(i -> Math.rint(10 * (range.get(0) + i * step)) / 10)
                .toList();
    }

    /** Where there can be no folder, the sheet that was just written goes as well. */
    private void writeFolder(PlannedFolder planned) throws IOException {
        boolean complete = false;
        try {
            planned.write(folder);
            complete = true;
        } finally {
            if (!complete && sheet != null) {
                Files.deleteIfExists(sheet);
            }
        }
        say("made " + folder + ": README.txt there says what to do next");
    }

    private void write(Path file, String html) throws IOException {
        if (Files.exists(file)) {
            throw new FileAlreadyExistsException(file.toString());
        }
        Files.writeString(file, html, StandardOpenOption.CREATE_NEW);
        say("wrote " + file + ": print it from any browser");
    }
}
