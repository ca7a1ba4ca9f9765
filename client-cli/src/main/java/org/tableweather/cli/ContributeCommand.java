package org.tableweather.cli;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.record.Contribution;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather contribute}. */
@Command(
        name = "contribute",
        description = "Checks folders or .zip archives here, then hands them to a server. Sending again is harmless:"
                + " the same content is kept once, and a broken upload goes on where it stopped.",
        footer = {"", "Example:", "  tableweather contribute my-hall --token-file my-token"})
final class ContributeCommand extends Subcommand {
    @Parameters(arity = "1..*", paramLabel = "PATH", description = "Contribution folder or .zip archive.")
    private List<Path> paths;

    @Option(names = "--no-check", description = "Leave the judging to the server.")
    private boolean unchecked;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Mixin
    private ServerOptions server;

    record Sent(List<SentPath> contributions) {}

    record SentPath(String path, @JsonUnwrapped ContributionUpload.Answer answer) {}

    @Override
    public Integer call() throws Exception {
        for (Path path : paths) {
            LocalData.mustExist(path);
        }
        ContributionUpload upload = new ContributionUpload(server.client(), Terminal.current());
        List<SentPath> answers = new ArrayList<>();
        for (Path path : paths) {
            ContributionUpload.Answer answer = send(upload, path);
            answers.add(new SentPath(path.toString(), answer));
            if (!json) {
                print(answer.inWords(path) + "\n");
            }
            if (answer.isRefused()) {
                say(FindingText.refusals(answer.report()));
            }
        }
        if (json) {
            print(JsonText.of(new Sent(answers)));
        }
        boolean refused = answers.stream().anyMatch(sent -> sent.answer().isRefused());
        return refused ? ExitCodes.REFUSED : ExitCodes.DONE;
    }

    private ContributionUpload.Answer send(ContributionUpload upload, Path path) throws IOException {
        if (!Files.isDirectory(path)) {
            check(path);
            return upload.send(path);
        }
        Path archive = Files.createTempFile("tableweather-", ".zip");
        try {
            // packing and checking read the same files: side by side they take as long as the slower
            CompletableFuture<byte[]> packing = CompletableFuture.supplyAsync(() -> pack(path, archive));
            try {
                check(path);
            } catch (IOException | RuntimeException verdict) {
                packing.exceptionally(alsoFailed -> new byte[0]).join();
                throw verdict;
            }
            return upload.send(archive, finish(packing));
        } finally {
            Files.deleteIfExists(archive);
        }
    }

    private static byte[] pack(Path folder, Path archive) {
        try {
            return ContributionWriter.pack(folder, archive);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] finish(CompletableFuture<byte[]> packing) throws IOException {
        try {
            return packing.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof UncheckedIOException io) {
                throw io.getCause();
            }
            throw e;
        }
    }

    private void check(Path path) throws IOException {
        if (unchecked) {
            return;
        }
        ContributionReader.Result result = LocalData.check(path, Terminal.current());
        CheckReport report = result.report();
        say(FindingText.headline(path.toString(), report));
        if (report.isRefused()) {
            say(FindingText.refusals(report));
            throw Failure.refused(
                    path + " is refused by the checks; nothing was sent",
                    "mend what is listed above; tableweather check shows all findings");
        }
        if (result.contribution().flatMap(Contribution::invented).orElse(false)) {
            say(path + " is marked as INVENTED, and will be shown as such; take \"invented\" out when it was measured");
        }
        if (result.contribution().filter(NewCommand::isUnnamed).isPresent()) {
            throw Failure.refused(
                    path + " names no contributor yet; nothing was sent",
                    "write your name, or the one you choose to be known by, into contribution.json");
        }
    }
}
