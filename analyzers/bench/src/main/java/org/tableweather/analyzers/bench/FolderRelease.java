package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.tableweather.analyzers.standard.catalogue.ReboundHumidity;
import org.tableweather.release.Manifest;
import org.tableweather.release.ReleaseBuilder;
import org.tableweather.release.ReleaseFacts;
import org.tableweather.release.ReleaseInput;
import org.tableweather.release.ReleaseVerifier;
import org.tableweather.release.ReleasedSummaries;
import org.tableweather.release.ReleasedTrials;

/** A release built or verified, as the command does it, in a program of its own: its memory is told. */
public final class FolderRelease {

    private FolderRelease() {}

    /**
     * Prints what was done.
     *
     * @param arguments {@code build}, a contribution and a folder for the release; or {@code verify} or {@code scan} and a
     *     release
     */
    public static void main(String[] arguments) throws IOException {
        Path first = Path.of(arguments[1]);
        System.out.println(
                switch (arguments[0]) {
                    case "build" -> build(first, Path.of(arguments[2]));
                    case "scan" -> scanned(first);
                    default -> verified(first);
                });
    }

    private static String build(Path contribution, Path release) throws IOException {
        ReleaseFacts facts = new ReleaseFacts(1, "Invented", LocalDate.of(2026, 2, 1), Optional.empty(), List.of());
        Manifest manifest = ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(contribution)), facts, release);
        return String.format(
                Locale.ROOT, "%,d trials released", manifest.totals().trials());
    }

    private static String scanned(Path release) throws IOException {
        long sessions = ReleasedSummaries.read(
                        new ReboundHumidity(), ReleasedTrials.at(release).orElseThrow(), trials -> {})
                .size();
        return String.format(Locale.ROOT, "%,d sessions summarised", sessions);
    }

    private static String verified(Path release) throws IOException {
        return ReleaseVerifier.verify(release).isSound() ? "verified" : "NOT as it was released";
    }
}
