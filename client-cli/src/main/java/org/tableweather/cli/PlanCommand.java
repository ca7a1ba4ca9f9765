package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
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
            "  tableweather plan --shot kick-3-rail --shot bank-2-rail --data winter/ --sheet plan.html",
            "  tableweather plan --visits 4 --folder spring/ --name \"A. Example\""
        })
final class PlanCommand extends Subcommand {
    @Option(
            names = "--shot",
            paramLabel = "ID",
            description = "A test shot, several times for several; standard: kick-3-rail.")
    private List<String> shots = List.of("kick-3-rail");

    @Option(
            names = "--climates",
            paramLabel = "PCT",
            split = ",",
            description = "Relative humidities to hold, %%, separated by commas; standard: 35,50,65.")
    private List<Double> climates = List.of(35.0, 50.0, 65.0);

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
            defaultValue = "1",
            description = "The run order is drawn with it: same seed, same order; standard: ${DEFAULT-VALUE}.")
    private long seed;

    @Option(
            names = "--first-day",
            paramLabel = "TIME",
            description = "When the first climate begins to be held, like 2026-01-12T14:00:00+01:00.")
    private String firstDay;

    @Option(
            names = "--settle-hours",
            paramLabel = "H",
            defaultValue = "4",
            description = "How long a climate is held before the first attempt; standard: ${DEFAULT-VALUE}.")
    private double settleHours;

    @Option(
            names = "--time-constant-hours",
            paramLabel = "H",
            description = "The time constant with which your cloth follows the air, if you have measured one.")
    private Double timeConstantHours;

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
            new PlannedFolder(report, chosen, name, room, licence).write(folder);
            say("made " + folder + ": README.txt there says what to do next");
        }
        print(json ? JsonText.ofSchema(report) : PlanText.of(report));
        return ExitCodes.DONE;
    }

    private PlanReport report(List<Shot> chosen) throws IOException {
        if (!(settleHours >= 0 && settleHours <= 24 * 14)) {
            throw Failure.usage("--settle-hours " + settleHours + " is outside 0..336", "choose within");
        }
        if (timeConstantHours != null && !(timeConstantHours > 0 && timeConstantHours <= 1000)) {
            throw Failure.usage(
                    "--time-constant-hours " + timeConstantHours + " is not above 0 and up to 1000", "choose within");
        }
        try {
            StudyPlan plan = new StudyPlan(climates, tempC, shots, attempts, visits, rooms);
            return PlanReport.of(
                    plan,
                    roomNumber,
                    seed,
                    new PlanReport.Times(firstDay(), settleHours, Optional.ofNullable(timeConstantHours)),
                    scatter.stated(chosen, this),
                    circuit.circuits());
        } catch (IllegalArgumentException e) {
            throw Failure.usage(e.getMessage(), "tableweather plan --help shows the options")
                    .because(e);
        }
    }

    private OffsetDateTime firstDay() {
        if (firstDay == null) {
            return NewFolder.EXAMPLE_DAY;
        }
        try {
            return OffsetDateTime.parse(firstDay);
        } catch (DateTimeParseException e) {
            throw Failure.usage(
                            "--first-day " + firstDay + " is no time with a zone",
                            "write it like 2026-01-12T14:00:00+01:00")
                    .because(e);
        }
    }

    private void write(Path file, String html) throws IOException {
        if (Files.exists(file)) {
            throw new FileAlreadyExistsException(file.toString());
        }
        Files.writeString(file, html, StandardOpenOption.CREATE_NEW);
        say("wrote " + file + ": print it from any browser");
    }
}
