package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.tableweather.release.Manifest;
import org.tableweather.release.ReleaseFolder;
import org.tableweather.release.ReleaseVerifier;
import org.tableweather.release.VerifyReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather release verify}. */
@Command(
        name = "verify",
        description =
                "Compares a release with its manifest, byte by byte, and its sessions with their digests; no server.",
        footer = {
            "",
            "Ends with 0 when all is as it was released, with 3 when not; names every file that is missing,",
            "too much or changed.",
            "",
            "Example:",
            "  tableweather release verify release-1"
        })
final class ReleaseVerifyCommand extends Subcommand {
    private static final String HASH_PREFIX = "sha256:";

    @Parameters(paramLabel = "FOLDER", description = "Folder of the release.")
    private Path folder;

    @Option(
            names = "--expect",
            paramLabel = "HASH",
            description = "SHA-256 that manifest.json must have, as whoever released it told: guards against a manifest"
                    + " that was changed together with the files.")
    private Optional<String> expected = Optional.empty();

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    record Verdict(
            boolean sound,
            String folder,
            Optional<Integer> number,
            String manifestSha256,
            int files,
            long bytes,
            List<VerifyReport.Fault> faults) {}

    @Override
    public Integer call() throws Exception {
        VerifyReport report = verified();
        boolean asExpected =
                expected.map(hash -> withoutPrefix(hash).equals(report.hash())).orElse(true);
        boolean sound = report.isSound() && asExpected;
        print(json ? JsonText.of(verdict(report, sound)) : text(report));
        if (!asExpected) {
            say(Manifest.FILE + " has the SHA-256 " + report.hash() + ", not the expected "
                    + withoutPrefix(expected.orElseThrow()));
        }
        if (!sound) {
            say("  remedy: do not use this copy; fetch the release again");
        }
        return sound ? ExitCodes.DONE : ExitCodes.REFUSED;
    }

    private VerifyReport verified() throws IOException {
        long bytes = -1;
        try {
            bytes = ReleaseFolder.open(folder).manifest().files().stream()
                    .mapToLong(Manifest.FileEntry::bytes)
                    .sum();
        } catch (org.tableweather.release.NoRelease e) {
            throw e;
        } catch (IOException e) {
            // a manifest that cannot be read is what the verifier reports
        }
        try (ProgressLine progress = ProgressLine.ofBytes(Terminal.current(), "verifying", bytes)) {
            return ReleaseVerifier.verify(folder, progress);
        }
    }

    private static String withoutPrefix(String hash) {
        String lower = hash.toLowerCase(Locale.ROOT);
        return lower.startsWith(HASH_PREFIX) ? lower.substring(HASH_PREFIX.length()) : lower;
    }

    private Verdict verdict(VerifyReport report, boolean sound) {
        return new Verdict(
                sound,
                folder.toString(),
                report.number(),
                report.hash(),
                report.files(),
                report.bytes(),
                report.faults());
    }

    private String text(VerifyReport report) {
        StringBuilder text = new StringBuilder();
        String name = report.number().map(number -> "release " + number).orElse("a release that cannot be told");
        text.append(String.format(
                Locale.ROOT,
                "%s: %s, %s; %,d files, %.1f MB, manifest sha256:%s%n",
                folder,
                name,
                report.isSound() ? "as it was released" : "NOT as it was released",
                report.files(),
                report.bytes() / 1e6,
                report.hash()));
        for (VerifyReport.Fault fault : report.faults()) {
            text.append(String.format(
                    Locale.ROOT,
                    "  %-8s %s%n           %s%n",
                    fault.problem().name().toLowerCase(Locale.ROOT),
                    fault.path(),
                    fault.detail()));
        }
        return text.toString();
    }
}
