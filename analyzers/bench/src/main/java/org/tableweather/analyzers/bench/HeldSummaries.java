package org.tableweather.analyzers.bench;

import java.time.OffsetDateTime;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** What an analyzer keeps of trials in memory, without a folder: each session's rows are made as it asks for them. */
final class HeldSummaries {

    private HeldSummaries() {}

    static <S> List<SessionSummary<S>> of(Analyzer<S> analyzer, HeldTrials held) {
        List<SessionSummary<S>> summaries = new ArrayList<>(held.rooms() * held.sessions());
        for (int room = 0; room < held.rooms(); room++) {
            for (int session = 0; session < held.sessions(); session++) {
                SessionRecord whole = session(room, session);
                summaries.add(new SessionSummary<>(
                        whole.roomKey(),
                        whole.sessionKey(),
                        whole.digest(),
                        true,
                        held.trials(),
                        analyzer.summarise(whole, rows(held, room * held.sessions() + session, whole.session()))));
            }
        }
        return summaries;
    }

    static SessionRecord session(int room, int number) {
        Session session = InventedPool.session(room, number);
        String roomKey = "held/" + InventedPool.room(room).id();
        return new SessionRecord(
                roomKey,
                roomKey + "/" + session.id(),
                // a stand-in of a digest's length: no content is hashed here
                String.format(Locale.ROOT, "%032x%032x", room, number),
                true,
                InventedPool.room(room),
                InventedPool.table(room),
                session,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static List<Trial> rows(HeldTrials held, int number, Session session) {
        int first = number * held.trials();
        OffsetDateTime start = session.startedAt().orElseThrow();
        return new AbstractList<>() {
            @Override
            public Trial get(int i) {
                int at = first + i;
                return InventedPool.trial(
                                InventedPool.SHOT,
                                session.id(),
                                i + 1,
                                start.plusSeconds(40L * i),
                                held.tempC()[at],
                                held.rhPct()[at],
                                41,
                                2.4,
                                held.angleDeg()[at],
                                0,
                                false)
                        .withClimate(new Climate(held.tempC()[at], held.rhPct()[at], ClimateSource.SPOT));
            }

            @Override
            public int size() {
                return held.trials();
            }
        };
    }
}
