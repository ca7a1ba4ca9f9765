package org.tableweather.release;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.LongConsumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.tableweather.release.VerifyReport.Fault;
import org.tableweather.release.VerifyReport.Problem;
import org.tableweather.schema.digest.Sha256;

/** Compares a release with its manifest: every file, every byte, every row count. Needs nothing but the folder. */
public final class ReleaseVerifier {
    private final Path folder;
    private final List<Fault> faults = new ArrayList<>();
    private final LongConsumer progress;
    private long bytes;

    private ReleaseVerifier(Path folder, LongConsumer progress) {
        this.folder = folder;
        this.progress = progress;
    }

    /**
     * Verifies a release.
     *
     * @param folder of it
     * @return what is not as it should be; a damaged file never throws
     * @throws IOException when the folder holds no manifest, or the disk fails
     */
    public static VerifyReport verify(Path folder) throws IOException {
        return verify(folder, bytes -> {});
    }

    /**
     * The same, reporting.
     *
     * @param progress told the bytes verified so far, file by file
     */
    public static VerifyReport verify(Path folder, LongConsumer progress) throws IOException {
        return new ReleaseVerifier(folder, progress).run();
    }

    private VerifyReport run() throws IOException {
        byte[] json = manifestBytes();
        String hash = Sha256.hex(json);
        bytes = json.length;
        checkHash(hash);
        Manifest manifest;
        try {
            manifest = Manifest.read(json);
        } catch (IOException e) {
            faults.add(new Fault(Manifest.FILE, Problem.CHANGED, e.getMessage()));
            return new VerifyReport(Optional.empty(), hash, 1, bytes, faults);
        }
        for (Manifest.FileEntry file : manifest.files()) {
            check(file);
        }
        extras(manifest);
        if (faults.isEmpty()) {
            checkSessions(manifest);
        }
        return new VerifyReport(
                Optional.of(manifest.number()), hash, manifest.files().size() + 1, bytes, faults);
    }

    private byte[] manifestBytes() throws IOException {
        if (!ReleaseFolder.isRelease(folder)) {
            ReleaseFolder.open(folder);
        }
        return Files.readAllBytes(folder.resolve(Manifest.FILE));
    }

    private void checkHash(String hash) throws IOException {
        Path file = folder.resolve(Manifest.HASH_FILE);
        if (!Files.isRegularFile(file)) {
            faults.add(new Fault(Manifest.HASH_FILE, Problem.MISSING, "it should hold the hash of " + Manifest.FILE));
            return;
        }
        String should = hash + "  " + Manifest.FILE + "\n";
        if (!Files.readString(file, StandardCharsets.ISO_8859_1).equals(should)) {
            faults.add(new Fault(
                    Manifest.FILE,
                    Problem.CHANGED,
                    "its SHA-256 is " + hash + ", which is not what " + Manifest.HASH_FILE
                            + " states: one of the two was changed"));
        }
    }

    private void check(Manifest.FileEntry file) throws IOException {
        Path path = folder.resolve(file.path()).normalize();
        if (!path.startsWith(folder.normalize()) || !Files.isRegularFile(path)) {
            faults.add(new Fault(file.path(), Problem.MISSING, "the manifest names it, and it is not there"));
            return;
        }
        String sha256 = Sha256.hex(path);
        long size = Files.size(path);
        bytes += size;
        progress.accept(bytes);
        if (size != file.bytes()) {
            changed(file, "it has " + size + " bytes instead of " + file.bytes());
        } else if (!sha256.equals(file.sha256())) {
            changed(file, "its SHA-256 is " + sha256 + " instead of " + file.sha256());
        } else if (file.rows().isPresent()) {
            checkRows(file, path);
        }
    }

    private void changed(Manifest.FileEntry file, String detail) {
        faults.add(new Fault(file.path(), Problem.CHANGED, detail));
    }

    private void checkRows(Manifest.FileEntry file, Path path) throws IOException {
        try (ParquetFileReader reader = RowGroups.open(path)) {
            long rows = reader.getRecordCount();
            if (rows != file.rows().get()) {
                faults.add(new Fault(
                        file.path(),
                        Problem.ROWS,
                        "it has " + rows + " rows instead of " + file.rows().get()));
            }
        }
    }

    private void extras(Manifest manifest) throws IOException {
        Set<String> known =
                manifest.files().stream().map(Manifest.FileEntry::path).collect(Collectors.toCollection(TreeSet::new));
        known.add(Manifest.FILE);
        known.add(Manifest.HASH_FILE);
        try (Stream<Path> paths = Files.walk(folder)) {
            paths.filter(path -> !Files.isDirectory(path))
                    .map(path -> folder.relativize(path).toString().replace('\\', '/'))
                    .filter(path -> !known.contains(path))
                    .sorted()
                    .forEach(path -> faults.add(new Fault(
                            path, Problem.EXTRA, "the manifest does not name it: it is no part of the release")));
        }
    }

    /**
     * Every session is read back: its trials complete and, where its digest holds, its content the very same; and every reading and
     * marked point belongs to one of them.
     */
    private void checkSessions(Manifest manifest) throws IOException {
        SessionProof proof = new SessionProof();
        ReleaseFolder release = ReleaseFolder.open(folder);
        for (String group : release.roomGroups()) {
            proof.read(release, group);
        }
        faults.addAll(proof.faults(manifest));
        faults.addAll(new RecordedProof().read(release));
    }
}
