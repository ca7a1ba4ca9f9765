package org.tableweather.server.catalogue;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MultivaluedHashMap;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.StreamSupport;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.ConfigProvider;
import org.junit.jupiter.api.Test;
import org.tableweather.server.Examples;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/**
 * No filter walks the table of trials, and no client's leaving leaves a query behind. With
 * {@code -Dtableweather.plans.trials=10000000} the same at that size, printing plans and times.
 */
@QuarkusTest
@QuarkusTestResource(TestData.class)
class QueryPlanTest {
    private static final String SIZE = "tableweather.plans.trials";
    private static final int TRIALS = Integer.getInteger(SIZE, 300_000);
    private static final int TRIALS_PER_SESSION = Integer.getInteger(SIZE) == null ? 300 : 1000;
    /** A client that has so many leaves. */
    private static final long MOST_TIMED = 1_000_000;

    private static final Map<String, String> FILTERS = new LinkedHashMap<>();

    static {
        FILTERS.put("shot", "shot-3");
        FILTERS.put("kind", "kick");
        FILTERS.put("room", "plan-1/hall-12");
        FILTERS.put("country", "NO");
        FILTERS.put("contributor", "plan-2");
        FILTERS.put("from", "2020-02-01");
        FILTERS.put("to", "2020-01-10");
        FILTERS.put("severityFrom", "none");
        FILTERS.put("severityTo", "warn");
        FILTERS.put("tempFrom", "25.4");
        FILTERS.put("tempTo", "16.5");
        FILTERS.put("rhFrom", "70.5");
        FILTERS.put("rhTo", "27.5");
        FILTERS.put("absoluteHumidityFrom", "15");
        FILTERS.put("absoluteHumidityTo", "4");
        FILTERS.put("dewPointFrom", "17");
        FILTERS.put("dewPointTo", "-2");
        FILTERS.put("vapourPressureFrom", "2000");
        FILTERS.put("vapourPressureTo", "500");
        FILTERS.put("mixingRatioFrom", "12");
        FILTERS.put("mixingRatioTo", "3");
        FILTERS.put("clothRegainFrom", "15");
        FILTERS.put("clothRegainTo", "7");
        FILTERS.put("bedRelativeHumidityFrom", "70");
        FILTERS.put("bedRelativeHumidityTo", "30");
        FILTERS.put("playingLengthFrom", "2000");
        FILTERS.put("playingLengthTo", "2600");
        FILTERS.put("woolFrom", "80");
        FILTERS.put("woolTo", "90");
        FILTERS.put("clothAgeFrom", "0");
        FILTERS.put("clothAgeTo", "10000");
    }

    @Inject
    DataSource database;

    @Inject
    Trials trials;

    @Test
    void noFilterWalksTheTableOfTrials() throws SQLException, IOException, InterruptedException {
        assertThat(new TreeSet<>(FILTERS.keySet())).isEqualTo(new TreeSet<>(List.of(CatalogueFilter.FILTERS)));
        try {
            fill();
            Map<String, List<String>> walking = new LinkedHashMap<>();
            for (Map.Entry<String, String> filter : FILTERS.entrySet()) {
                List<JsonNode> plans = plans(filter.getKey(), filter.getValue());
                if (plans.stream().anyMatch(QueryPlanTest::walksTrials)) {
                    walking.put(
                            filter.getKey(),
                            plans.stream().map(JsonNode::toString).toList());
                }
                time(filter.getKey(), filter.getValue(), plans);
            }
            assertThat(walking).isEmpty();
            aLeavingClientEndsItsQuery();
        } finally {
            try (Connection connection = database.getConnection()) {
                InventedCatalogue.remove(connection);
            }
        }
    }

    private void fill() throws SQLException {
        int contribution = Tokens.as(Tokens.of("plans", "contributor", "contribute"))
                .contentType("application/zip")
                .body(Examples.archive("plans"))
                .post("/api/v1/contributions")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
        try (Connection connection = database.getConnection()) {
            InventedCatalogue.fill(connection, contribution, TRIALS, TRIALS_PER_SESSION);
        }
    }

    /** The plans of the first two readings of trials, as the very statements are made. */
    private List<JsonNode> plans(String name, String value) throws IOException {
        List<JsonNode> plans = new ArrayList<>();
        String columns = "SELECT t.session_id, t.ordinal, " + TrialColumn.sqlNames() + " FROM trial t";
        trials.walk(
                filter(name, value),
                Trials.Position.START,
                50_000,
                ClientStream.Listening.ALWAYS,
                (reading, batch, after) -> {
                    for (SessionRun run : SessionRun.of(batch.ids())) {
                        String sql = reading.literal(columns, run, Trials.from(batch, after), Trials.ORDER);
                        reading.query("EXPLAIN (FORMAT JSON) " + sql, new Where(), row -> {
                            plans.add(new ObjectMapper()
                                    .readTree(row.getString(1))
                                    .path(0)
                                    .path("Plan"));
                            return true;
                        });
                    }
                    return plans.size() < 2;
                });
        return plans;
    }

    private static CatalogueFilter filter(String name, String value) {
        MultivaluedHashMap<String, String> query = new MultivaluedHashMap<>();
        query.putSingle(name, value);
        return CatalogueFilter.of(query);
    }

    private static boolean walksTrials(JsonNode plan) {
        return plan.path("Node Type").asText().equals("Seq Scan")
                        && plan.path("Relation Name").asText().equals("trial")
                || StreamSupport.stream(plan.path("Plans").spliterator(), false).anyMatch(QueryPlanTest::walksTrials);
    }

    private static String nodes(JsonNode plan) {
        List<String> nodes = new ArrayList<>();
        for (JsonNode inner = plan;
                !inner.isMissingNode();
                inner = inner.path("Plans").path(0)) {
            nodes.add(inner.path("Node Type").asText());
        }
        return String.join(" < ", nodes);
    }

    private static void time(String name, String value, List<JsonNode> plans) throws IOException {
        if (Integer.getInteger(SIZE) == null) {
            return;
        }
        long start = System.nanoTime();
        long rows = -1;
        URI stream =
                URI.create("http://127.0.0.1:" + RestAssured.port + "/api/v1/trials?format=csv&" + name + "=" + value);
        try (InputStream csv = stream.toURL().openStream()) {
            byte[] buffer = new byte[1 << 16];
            for (int read = csv.read(buffer); read >= 0 && rows < MOST_TIMED; read = csv.read(buffer)) {
                for (int i = 0; i < read; i++) {
                    rows += buffer[i] == '\n' ? 1 : 0;
                }
            }
        }
        double all = (System.nanoTime() - start) / 1e9;
        start = System.nanoTime();
        given().get("/api/v1/trials?" + name + "=" + value).then().statusCode(200);
        double page = (System.nanoTime() - start) / 1e9;
        start = System.nanoTime();
        given().get("/api/v1/trials/summary?" + name + "=" + value).then().statusCode(200);
        double summary = (System.nanoTime() - start) / 1e9;
        System.out.printf(
                "%s = %s: the first %,d rows as CSV in %.2f s, a page %.3f s, summary %.3f s; %s%n",
                name, value, rows, all, page, summary, plans.isEmpty() ? "no session" : nodes(plans.get(0)));
    }

    /**
     * A client that reads a little and stops: the server waits for it and holds no more than its buffers; when it leaves, the
     * transaction ends.
     */
    private void aLeavingClientEndsItsQuery() throws IOException, SQLException, InterruptedException {
        int port = ConfigProvider.getConfig().getValue("quarkus.http.test-port", Integer.class);
        int actual = port == 0 ? RestAssured.port : port;
        long before = used();
        for (String form : List.of("csv", "ndjson", "parquet")) {
            try (Socket socket = new Socket("127.0.0.1", actual)) {
                OutputStream out = socket.getOutputStream();
                out.write(("GET /api/v1/trials?format=" + form + " HTTP/1.1\r\nHost: localhost\r\n\r\n")
                        .getBytes(StandardCharsets.US_ASCII));
                out.flush();
                assertThat(socket.getInputStream().readNBytes(512)).hasSize(512);
                if (!form.equals("parquet")) {
                    Thread.sleep(1000);
                    assertThat(readers()).as(form).isOne();
                    // 300,000 rows are some 30 MB as CSV and 100 MB as JSON
                    assertThat(used() - before).as("bytes held for " + form).isLessThan(25_000_000);
                }
            }
            for (int i = 0; i < 200 && readers() > 0; i++) {
                Thread.sleep(100);
            }
            assertThat(readers()).as(form).isZero();
        }
    }

    private static long used() {
        System.gc();
        Runtime runtime = Runtime.getRuntime();
        return runtime.totalMemory() - runtime.freeMemory();
    }

    private int readers() throws SQLException {
        String sql = "SELECT count(*) FROM pg_stat_activity WHERE pid <> pg_backend_pid() AND xact_start IS NOT NULL"
                + " AND query ILIKE '%FROM trial t%'";
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getInt(1);
        }
    }
}
