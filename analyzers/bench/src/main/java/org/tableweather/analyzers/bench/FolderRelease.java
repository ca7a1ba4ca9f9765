package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.tableweather.release.Manifest;
import org.tableweather.release.ReleaseBuilder;
import org.tableweather.release.ReleaseFacts;
import org.tableweather.release.ReleaseInput;
import org.tableweather.release.ReleaseVerifier;

/** A release built or verified, as the command does it, in a program of its own: its memory is told. */
public final class FolderRelease {

    private FolderRelease() {}

    /**
     * Prints what was done.
     *
     * @param arguments {@code build}, a contribution and a folder for the release; or {@code verify} and a release
     */
    public static void main(String[] arguments) throws IOException {
        System.out.println(
                arguments[0].equals("build")
                        ? build(Path.of(arguments[1]), Path.of(arguments[2]))
                        : verified(Path.of(arguments[1])));
    }

    private static String build(Path contribution, Path release) throws IOException {
        ReleaseFacts facts = new ReleaseFacts(1, "Invented", LocalDate.of(2026, 2, 1), Optional.empty(), List.of());
        Manifest manifest = ReleaseBuilder.build(ReleaseInput.ofFolders(List.of(contribution)), facts, release);
        return String.format(
                Locale.ROOT, "%,d trials released", manifest.totals().trials());
    }

    private static String verified(Path release) throws IOException {
        return ReleaseVerifier.verify(release).isSound() ? "verified" : "NOT as it was released";
    }
}
