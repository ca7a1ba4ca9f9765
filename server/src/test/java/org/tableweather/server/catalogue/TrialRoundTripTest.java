package org.tableweather.server.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.OutcomeUncertainty;
import org.tableweather.schema.record.Trial;
import org.tableweather.server.TestData;

/** What PostgreSQL gives back is what was sent, to the last bit. */
@QuarkusTest
@QuarkusTestResource(TestData.class)
class TrialRoundTripTest {
    private static final int SESSION = Integer.MAX_VALUE;
    private static final double NONE = Double.NaN;

    @Inject
    DataSource database;

    private static final Trial FULL = new Trial(
            "s1",
            "7b",
            Optional.of(Instant.parse("2026-01-12T17:07:00.123456Z")),
            Kind.BREAK,
            "own-break",
            "the red one",
            21.1,
            0.1 + 0.2,
            -0.0,
            Double.MIN_VALUE,
            Double.MAX_VALUE,
            -1e-300,
            4,
            5,
            6,
            7,
            8,
            Made.YES,
            0,
            9,
            10,
            11,
            12,
            13,
            15,
            16,
            17,
            "damp; \"quoted\"\n\tÆrlig talt, 湿度 🎱",
            new Climate(20.5, 41.25, ClimateSource.LOG),
            new OutcomeUncertainty(0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3));

    private static final Trial BARE = new Trial(
            "s1",
            "1",
            Optional.empty(),
            Kind.KICK,
            "kick-3-rail",
            "",
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            Made.NOT_STATED,
            -1,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            -1,
            NONE,
            NONE,
            "",
            Climate.NONE);

    private static final Trial BEFORE_THE_EPOCH = new Trial(
            "s1",
            "2",
            Optional.of(Instant.parse("1969-07-20T20:17:40.000001Z")),
            Kind.KICK,
            "kick-3-rail",
            "",
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            Made.NO,
            3,
            NONE,
            NONE,
            NONE,
            NONE,
            NONE,
            -1,
            NONE,
            NONE,
            "x".repeat(300_000),
            Climate.NONE);

    private List<Trial> sendAndFetch(List<Trial> trials) throws SQLException, IOException {
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            TrialCopy copy = TrialCopy.open(connection);
            try {
                int ordinal = 0;
                for (Trial trial : trials) {
                    copy.add(SESSION, ++ordinal, trial);
                }
                assertThat(copy.finish()).isEqualTo(trials.size());
                return fetch(connection);
            } finally {
                copy.abandon();
                connection.rollback();
            }
        }
    }

    private static List<Trial> fetch(Connection connection) throws SQLException {
        List<Trial> back = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT " + TrialColumn.sqlNames()
                        + " FROM trial WHERE session_id = " + SESSION + " ORDER BY ordinal")) {
            while (row.next()) {
                back.add(TrialRow.read(row, 1, "s1"));
            }
        }
        return back;
    }

    @Test
    void everyColumnComesBack() throws SQLException, IOException {
        List<Trial> sent = List.of(FULL, BARE, BEFORE_THE_EPOCH);
        assertThat(sendAndFetch(sent)).isEqualTo(sent);
    }

    @Test
    void moreRowsThanFitOneBatchComeBackInOrder() throws SQLException, IOException {
        List<Trial> sent = new ArrayList<>();
        for (int i = 0; i < 10_001; i++) {
            sent.add(i % 2 == 0 ? FULL : BARE);
        }
        assertThat(sendAndFetch(sent)).isEqualTo(sent);
    }

    @Test
    void whatTheDatabaseCannotHoldIsNamed() {
        Trial far = new Trial(
                "s1",
                "1",
                Optional.of(Instant.MAX),
                Kind.KICK,
                "kick-3-rail",
                "",
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                Made.NO,
                -1,
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                -1,
                NONE,
                NONE,
                "",
                Climate.NONE);
        assertThatThrownBy(() -> sendAndFetch(List.of(BARE, far)))
                .isInstanceOf(UnstorableValue.class)
                .hasMessageContaining("started_at");
    }
}
