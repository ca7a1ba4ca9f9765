package org.tableweather.cli;

import java.nio.file.Path;
import java.util.List;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Shot;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather new}. */
@Command(
        name = "new",
        description = "Makes a contribution folder to fill in: valid at once, with example rows to be replaced, and a"
                + " README.txt that explains every column.")
final class NewCommand extends Subcommand {
    private static final int MOST_SESSIONS = 1000;
    private static final int MOST_ATTEMPTS = 500;

    @Parameters(paramLabel = "FOLDER", description = "Created; must not hold a contribution yet.")
    private Path folder;

    @Option(
            names = "--shot",
            paramLabel = "ID",
            defaultValue = "kick-3-rail",
            description = "The test shot; tableweather shots lists them; standard: ${DEFAULT-VALUE}.")
    private String shot;

    @Option(
            names = {"--sessions", "--climates"},
            paramLabel = "N",
            defaultValue = "5",
            description = "How many sessions (held climates) to prepare; standard: ${DEFAULT-VALUE}.")
    private int sessions;

    @Option(
            names = "--attempts",
            paramLabel = "N",
            defaultValue = "5",
            description =
                    "How many example rows of each session, one per attempt of your plan; standard: ${DEFAULT-VALUE}.")
    private int attempts;

    @Option(names = "--name", paramLabel = "NAME", description = "Your name, or the one you choose to be known by.")
    private String name = NewFolder.NAMELESS;

    @Option(
            names = "--room",
            paramLabel = "NAME",
            description = "What the room is called; standard: the folder's name.")
    private String room;

    @Option(
            names = "--licence",
            paramLabel = "SPDX",
            defaultValue = "CC-BY-4.0",
            description = "The licence of your data; standard: ${DEFAULT-VALUE}.")
    private String licence;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    record Made(String folder, List<String> files) {}

    @Override
    public Integer call() throws Exception {
        if (sessions < 1 || sessions > MOST_SESSIONS) {
            throw Failure.usage("--sessions " + sessions + " is outside 1.." + MOST_SESSIONS, "choose one within");
        }
        if (attempts < 1 || attempts > MOST_ATTEMPTS) {
            throw Failure.usage("--attempts " + attempts + " is outside 1.." + MOST_ATTEMPTS, "choose one within");
        }
        Shot chosen = ShotsCommand.shot(shot);
        String roomName =
                room == null ? folder.toAbsolutePath().normalize().getFileName().toString() : room;
        new NewFolder(chosen, sessions, attempts, name, roomName, licence).write(folder);
        if (json) {
            print(JsonText.of(new Made(folder.toString(), NewFolder.FILES)));
        } else {
            say("made " + folder + ": README.txt there says what to do next");
        }
        return ExitCodes.DONE;
    }

    /** Whether nobody has written a name into a folder made here. */
    static boolean isUnnamed(Contribution contribution) {
        return contribution.contributor().name().equals(NewFolder.NAMELESS);
    }
}
