package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.release.Manifest;
import org.tableweather.release.ReleaseBuilder;
import org.tableweather.release.ReleaseFacts;
import org.tableweather.release.ReleaseFolder;
import org.tableweather.release.ReleaseInput;
import org.tableweather.release.ReleaseVerifier;

/** Against a hand-written server of a real release: whole, in parts, over a line that breaks, and damaged. */
class FetchCommandTest {
    private static final String FILES = "/api/v1/releases/1/files/";

    @TempDir
    Path root;

    private Path release;
    private Manifest manifest;
    private HttpServer http;
    private final Map<String, String> ranges = new ConcurrentHashMap<>();
    private final Set<String> breaking = ConcurrentHashMap.newKeySet();
    private final Queue<String> requests = new ConcurrentLinkedQueue<>();
    private final Set<String> damaged = ConcurrentHashMap.newKeySet();

    @BeforeEach
    void serve() throws IOException {
        List<Path> folders = InventedFolders.all();
        release = root.resolve("served");
        manifest = ReleaseBuilder.build(
                ReleaseInput.ofFolders(folders),
                new ReleaseFacts(1, "Invented", LocalDate.of(2026, 2, 1), Optional.empty(), List.of()),
                release);
        http = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        http.createContext("/api/v1/releases/1", this::answer);
        http.start();
    }

    @AfterEach
    void stop() {
        http.stop(0);
    }

    @Test
    void bringsAReleaseThatVerifies() throws IOException {
        Path target = root.resolve("here");
        Ran ran = fetch(target);
        assertThat(ran.exitCode()).as(ran.err()).isZero();
        assertThat(ReleaseVerifier.verify(target).faults()).isEmpty();
        assertThat(ReleaseFolder.open(target).manifest().hash()).isEqualTo(manifest.hash());
        assertThat(ran.out()).contains(manifest.hash());
    }

    @Test
    void goesOnWhereABrokenLineStopped() throws IOException {
        Manifest.FileEntry large = trials();
        breaking.add(large.path());
        Path target = root.resolve("here");
        Ran ran = fetch(target, "--silence-seconds", "2");
        assertThat(ran.exitCode()).as(ran.err()).isZero();
        assertThat(ranges).containsEntry(large.path(), "bytes=" + large.bytes() / 2 + "-");
        assertThat(ReleaseVerifier.verify(target).faults()).isEmpty();
    }

    @Test
    void goesOnWithWhatAnEarlierRunLeft() throws IOException {
        Manifest.FileEntry large = trials();
        Path target = root.resolve("here");
        Path part = target.resolve(large.path() + ".part");
        Files.createDirectories(part.getParent());
        byte[] whole = Files.readAllBytes(release.resolve(large.path()));
        Files.write(part, Arrays.copyOf(whole, 100));
        assertThat(fetch(target).exitCode()).isZero();
        assertThat(ranges).containsEntry(large.path(), "bytes=100-");
        assertThat(part).doesNotExist();
        assertThat(ReleaseVerifier.verify(target).faults()).isEmpty();
    }

    @Test
    void refusesADamagedFileByItsName() {
        Manifest.FileEntry large = trials();
        damaged.add(large.path());
        Path target = root.resolve("here");
        Ran ran = fetch(target);
        assertThat(ran.exitCode()).isEqualTo(ExitCodes.REFUSED);
        assertThat(ran.err()).contains(large.path(), large.sha256());
        assertThat(target.resolve(large.path())).doesNotExist();
        assertThat(target.resolve(Manifest.FILE)).doesNotExist();
    }

    @Test
    void bringsAPartAndLaterTheRest() throws IOException {
        List<String> groups = ReleaseFolder.open(release).roomGroups();
        Path target = root.resolve("here");
        Ran part = fetch(target, "--kind", "kick", "--room-group", groups.get(0));
        assertThat(part.exitCode()).as(part.err()).isZero();
        assertThat(manifest.files().stream()
                        .map(Manifest.FileEntry::path)
                        .filter(path -> path.startsWith("trials/"))
                        .filter(path -> Files.exists(target.resolve(path))))
                .isNotEmpty()
                .allMatch(path -> path.contains("kind=kick") && path.contains("room_group=" + groups.get(0)));
        assertThat(target.resolve("readings/room_group=" + groups.get(0) + "/part-0.parquet"))
                .as("the readings of these rooms come along")
                .exists();
        assertThat(fetch(target).exitCode()).isZero();
        assertThat(ReleaseVerifier.verify(target).faults()).isEmpty();
    }

    @Test
    void leavesAnotherReleaseAlone() throws IOException {
        Path target = root.resolve("other");
        ReleaseBuilder.build(
                ReleaseInput.ofFolders(InventedFolders.all().subList(0, 2)),
                new ReleaseFacts(2, "Another", LocalDate.of(2026, 3, 1), Optional.empty(), List.of()),
                target);
        Ran ran = fetch(target);
        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("holds another release");
    }

    @Test
    void tellsAKindThatThereIsNot() {
        assertThat(fetch(root.resolve("here"), "--kind", "kik").err()).contains("no kind kik", "kick");
    }

    @Test
    void aRoomIsSetBesideAServersReleaseAndNothingOfItIsSent() throws IOException {
        String elm = InventedFolders.of("elm").toString();
        List<Path> before = left();

        Ran ran = Ran.with("compare", "--data", elm, "--release", "1", "--server", url(), "--json");

        assertThat(ran.exitCode()).as(ran.err()).isZero();
        assertThat(ran.err()).contains(manifest.hash());
        assertThat(ran.out())
                .isEqualTo(Ran.with("compare", "--data", elm, "--release", release.toString(), "--json")
                        .out());
        assertThat(requests)
                .isNotEmpty()
                .allMatch(request -> request.startsWith("GET ") && request.endsWith(" 0"))
                .as("what an analysis does not read is not fetched")
                .noneMatch(request -> request.contains("/readings/"));
        assertThat(left()).isEqualTo(before);
    }

    @Test
    void aDamagedReleaseIsNotComparedWith() throws IOException {
        damaged.add(trials().path());
        List<Path> before = left();

        Ran ran = Ran.with(
                "compare", "--data", InventedFolders.of("elm").toString(), "--release", "1", "--server", url());

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.REFUSED);
        assertThat(ran.err()).contains(trials().path());
        assertThat(ran.out()).isEmpty();
        assertThat(left()).isEqualTo(before);
    }

    @Test
    void aNumberNeedsAServerOrAFolderOfThatName() {
        Ran ran = Ran.with("compare", "--data", InventedFolders.of("elm").toString(), "--release", "123456789");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("no folder 123456789 here", "--server URL");
    }

    /** What fetched releases there are in the folder of temporary files. */
    private static List<Path> left() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return files.filter(file -> file.getFileName().toString().startsWith("tableweather-release-"))
                    .sorted()
                    .toList();
        }
    }

    private String url() {
        return "http://127.0.0.1:" + http.getAddress().getPort();
    }

    private Ran fetch(Path target, String... more) {
        List<String> arguments = new ArrayList<>(List.of("fetch", "1", "--to", target.toString(), "--server", url()));
        arguments.addAll(List.of(more));
        return Ran.with(arguments.toArray(String[]::new));
    }

    private Manifest.FileEntry trials() {
        return manifest.files().stream()
                .filter(file -> file.path().startsWith("trials/"))
                .findFirst()
                .orElseThrow();
    }

    private void answer(HttpExchange exchange) throws IOException {
        String path = exchange.getRequestURI().getPath();
        requests.add(exchange.getRequestMethod() + " " + path + " "
                + exchange.getRequestBody().readAllBytes().length);
        if (!path.startsWith(FILES)) {
            byte[] register = ("{\"number\": 1, \"manifestSha256\": \"" + manifest.hash() + "\"}")
                    .getBytes(StandardCharsets.UTF_8);
            send(exchange, 200, register, register.length);
            return;
        }
        String file = path.substring(FILES.length());
        byte[] whole = Files.readAllBytes(release.resolve(file));
        if (damaged.contains(file)) {
            whole[whole.length / 2] ^= 1;
        }
        String range = exchange.getRequestHeaders().getFirst("Range");
        int from = 0;
        if (range != null) {
            ranges.put(file, range);
            from = Integer.parseInt(range.substring("bytes=".length(), range.length() - 1));
        }
        byte[] rest = Arrays.copyOfRange(whole, from, whole.length);
        boolean breaks = breaking.remove(file);
        send(exchange, from > 0 ? 206 : 200, rest, breaks ? rest.length / 2 : rest.length);
    }

    /** Promises all bytes, and sends some. */
    private static void send(HttpExchange exchange, int status, byte[] bytes, int sent) throws IOException {
        exchange.sendResponseHeaders(status, bytes.length);
        try (OutputStream out = exchange.getResponseBody()) {
            out.write(bytes, 0, sent);
        } catch (IOException e) {
            // fewer than promised: the line breaks, as it should
        }
        exchange.close();
    }
}
