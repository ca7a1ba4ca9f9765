package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Proxy;
import java.net.ProxySelector;
import java.net.SocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.SummaryJson;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.ReboundHumidity;
import org.tableweather.release.ReleaseBuilder;
import org.tableweather.release.ReleaseFacts;
import org.tableweather.release.ReleaseFolder;
import org.tableweather.release.ReleaseInput;
import org.tableweather.release.ReleasedSummaries;
import org.tableweather.release.ReleasedTrials;
import org.tableweather.release.TrialParquet;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.TrialSink;

/** A release gives the numbers of the folders that went in, to the last digit. */
class ReleasedDataTest {
    @TempDir
    static Path work;

    private static final byte[] VERSION = ("{\"summaryVersion\": \""
                    + new ReboundHumidity().info().summaryVersion() + "\"}")
            .getBytes(StandardCharsets.UTF_8);

    private static String pooled;
    private static Path all;
    private static Path eleven;

    @BeforeAll
    static void build() throws IOException {
        pooled = Ran.with(InventedFolders.after("analyze", "rebound-humidity", "--json", "--data"))
                .out();
        all = release("all", InventedFolders.all());
        eleven = release(
                "eleven",
                InventedFolders.all().stream()
                        .filter(folder -> !folder.endsWith("elm"))
                        .toList());
    }

    private static Path release(String name, List<Path> folders) throws IOException {
        Path folder = work.resolve(name);
        ReleaseFacts facts = new ReleaseFacts(1, "Invented", LocalDate.of(2026, 2, 1), Optional.empty(), List.of());
        ReleaseBuilder.build(ReleaseInput.ofFolders(folders), facts, folder);
        return folder;
    }

    private static Path copy(String name) throws IOException {
        Path copy = work.resolve(name);
        try (Stream<Path> files = Files.walk(all)) {
            for (Path file : files.toList()) {
                Files.copy(file, copy.resolve(all.relativize(file).toString()));
            }
        }
        return copy;
    }

    private static Path oneTrialFile(Path release) throws IOException {
        try (Stream<Path> files = Files.walk(release.resolve("trials"))) {
            return files.filter(Files::isRegularFile).sorted().findFirst().orElseThrow();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"rebound-humidity", "repeatability", "make-rate", "table-speed"})
    void givesTheVeryBytesOfTheFolders(String analyzer) {
        String folders = Ran.with(InventedFolders.after("analyze", analyzer, "--json", "--data"))
                .out();

        assertThat(Ran.with("analyze", analyzer, "--json", "--data", all.toString())
                        .out())
                .isEqualTo(folders)
                .contains("sha256:");
    }

    @Test
    void mixesWithFoldersAndCountsASessionOnce() {
        String elm = InventedFolders.of("elm").toString();

        assertThat(Ran.with("analyze", "rebound-humidity", "--json", "--data", eleven.toString(), elm)
                        .out())
                .isEqualTo(pooled);
        Ran twice = Ran.with("analyze", "rebound-humidity", "--json", "--data", all.toString(), elm);
        assertThat(twice.out()).isEqualTo(pooled);
        assertThat(twice.err()).contains("counted once");
    }

    @Test
    void theGroupsOfRoomsTogetherAreTheRelease() throws IOException {
        List<String> arguments = new ArrayList<>(List.of("analyze", "rebound-humidity", "--json", "--data"));
        try (Stream<Path> groups = Files.list(all.resolve("sessions"))) {
            groups.sorted().map(Path::toString).forEach(arguments::add);
        }

        assertThat(Ran.with(arguments.toArray(String[]::new)).out()).isEqualTo(pooled);
    }

    @Test
    void aKindAloneIsSaidToBeAPart() throws IOException {
        Path kind = oneTrialFile(all).getParent().getParent();

        Ran ran = Ran.with("analyze", "rebound-humidity", "--data", kind.toString());

        assertThat(ran.err())
                .contains("release 1 in " + all)
                .contains("of kind")
                .contains("not complete");
    }

    @Test
    void aFileThatStandsAloneGivesTheSameNumbers() throws IOException {
        Path folder = InventedFolders.of("elm");
        Path file = work.resolve("elm.parquet");
        try (OutputStream out = Files.newOutputStream(file);
                TrialParquet.Writer writer = TrialParquet.writer(out);
                ContributionSource source = ContributionSource.of(folder, ArchiveLimits.defaults())) {
            ContributionReader.create()
                    .read(source, ContributionReader.ContributionListener.NONE, TrialSink.NONE, (session, trials) -> {
                        for (var trial : trials) {
                            writer.write(session, trials.size(), trial);
                        }
                    });
        }

        assertThat(Ran.with("analyze", "repeatability", "--json", "--data", file.toString())
                        .out())
                .isEqualTo(Ran.with("analyze", "repeatability", "--json", "--data", folder.toString())
                        .out());
    }

    @Test
    void aFileTakenOutOfItsReleaseIsRefusedByName() throws IOException {
        Path lost = Files.copy(oneTrialFile(all), work.resolve("lost.parquet"));

        Ran ran = Ran.with("analyze", "rebound-humidity", "--data", lost.toString());

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.FAULT);
        assertThat(ran.err()).contains(lost.toString()).contains("does not say what its sessions are");
        Path folder = Files.createDirectories(work.resolve("lost/kind=kick")).getParent();
        assertThat(Ran.with("analyze", "rebound-humidity", "--data", folder.toString())
                        .err())
                .contains("kind=kick is a part of a release, and the release is not around it");
    }

    /** In pages, page index and footer alike. */
    @ParameterizedTest
    @ValueSource(doubles = {0.0, 0.1, 0.33, 0.5, 0.7, 0.85, 0.99})
    void aChangedByteIsRefusedByTheNameOfItsFile(double place) throws IOException {
        Path release = copy("changed-" + place);
        Path file = oneTrialFile(release);
        byte[] bytes = Files.readAllBytes(file);
        bytes[(int) (bytes.length * place)] ^= 1;
        Files.write(file, bytes);

        Ran ran = Ran.with("analyze", "rebound-humidity", "--data", release.toString());

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.REFUSED);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).contains(file.toString()).contains("SHA-256").contains("fetch the release anew");
    }

    @Test
    void aShortenedFileIsRefusedBeforeAnythingIsRead() throws IOException {
        Path release = copy("shortened");
        Path file = oneTrialFile(release);
        byte[] bytes = Files.readAllBytes(file);
        Files.write(file, java.util.Arrays.copyOf(bytes, bytes.length - 1));

        assertThat(Ran.with("analyze", "rebound-humidity", "--data", release.toString())
                        .err())
                .contains(file.toString())
                .contains((bytes.length - 1) + " bytes, the manifest states " + bytes.length);
    }

    @Test
    void aRoomThatWasNeverContributedIsSetBesideAReleaseAndNobodyIsAsked() throws IOException {
        String elm = InventedFolders.of("elm").toString();
        ProxySelector before = ProxySelector.getDefault();
        AskedAddresses asked = new AskedAddresses(new ArrayList<>());
        ProxySelector.setDefault(asked);
        try {
            Ran ran = Ran.with("compare", "--data", elm, "--release", eleven.toString(), "--json");

            assertThat(ran.out()).isEqualTo(comparedByFolders());
            assertThat(asked.all()).isEmpty();
            // the same watch sees a command that does ask
            Ran.with("compare", "elm", "--server", "http://127.0.0.1:1");
            assertThat(asked.all()).isNotEmpty();
        } finally {
            ProxySelector.setDefault(before);
        }
    }

    @Test
    void aRoomSetBesideAServersPoolIsNotSent() throws IOException {
        List<String> requests = new ArrayList<>();
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        byte[] pool = pool();
        server.createContext("/", exchange -> {
            int sent = exchange.getRequestBody().readAllBytes().length;
            requests.add(exchange.getRequestMethod() + " " + exchange.getRequestURI() + " " + sent);
            byte[] body = exchange.getRequestURI().getPath().endsWith("/summaries") ? pool : VERSION;
            exchange.sendResponseHeaders(200, body.length);
            exchange.getResponseBody().write(body);
            exchange.close();
        });
        server.start();
        try {
            String url = "http://127.0.0.1:" + server.getAddress().getPort();
            String elm = InventedFolders.of("elm").toString();
            Ran ran = Ran.with("compare", "--data", elm, "--server", url, "--json");

            assertThat(ran.out()).isEqualTo(comparedByFolders());
            assertThat(requests)
                    .containsExactly(
                            "GET /api/v1/analyzers/rebound-humidity 0",
                            "GET /api/v1/analyzers/rebound-humidity/summaries 0");
        } finally {
            server.stop(0);
        }
    }

    static Stream<Analyzer<?>> analyzers() {
        return AnalyzerCatalogue.discover().all().stream();
    }

    @ParameterizedTest
    @MethodSource("analyzers")
    <S> void everyAnalyzerMakesTheSameOfColumnsAndOfRows(Analyzer<S> analyzer) throws IOException {
        List<String> byRows = new ArrayList<>();
        ReleaseFolder.open(all)
                .sessions((session, trials) -> byRows.add(text(new SessionSummary<>(
                        session.roomKey(),
                        session.sessionKey(),
                        session.digest(),
                        session.invented(),
                        trials.size(),
                        analyzer.summarise(session, trials)))));
        List<String> read =
                ReleasedSummaries.read(analyzer, ReleasedTrials.at(all).orElseThrow(), 2, rows -> {}).stream()
                        .map(ReleasedDataTest::text)
                        .toList();

        assertThat(read).isEqualTo(byRows).isNotEmpty();
    }

    private static String text(SessionSummary<?> summary) {
        return new String(SummaryJson.write(summary), StandardCharsets.UTF_8);
    }

    private static String comparedByFolders() {
        return Ran.with(InventedFolders.after("compare", "elm", "--json", "--data"))
                .out();
    }

    /** The eleven other rooms as a server tells them. */
    private static byte[] pool() throws IOException {
        StringBuilder lines = new StringBuilder();
        ReleasedSummaries.read(new ReboundHumidity(), ReleasedTrials.at(eleven).orElseThrow(), rows -> {})
                .forEach(summary -> lines.append(new String(SummaryJson.write(summary), StandardCharsets.UTF_8))
                        .append('\n'));
        return lines.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** Remembers every address that a connection of this process is about to be made to. */
    private static final class AskedAddresses extends ProxySelector {
        private final List<URI> all;

        AskedAddresses(List<URI> all) {
            this.all = all;
        }

        List<URI> all() {
            return all;
        }

        @Override
        public List<Proxy> select(URI address) {
            all.add(address);
            return List.of(Proxy.NO_PROXY);
        }

        @Override
        public void connectFailed(URI address, SocketAddress proxy, IOException reason) {
            // nobody listens there
        }
    }

    @Test
    void aReleaseAndATypedServerAreTwoPools() {
        Ran ran = Ran.with("compare", "elm", "--release", all.toString(), "--server", "http://127.0.0.1:1");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("two pools");
        assertThat(Ran.with(
                                "compare",
                                "elm",
                                "--release",
                                InventedFolders.of("elm").toString())
                        .err())
                .contains("is no release");
    }
}
