package org.tableweather.server.contribution;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.RowOwners;
import org.tableweather.schema.folder.SessionTraces;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;
import org.tableweather.server.catalogue.PublishedSessions;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/**
 * Puts together what is known of one session: its trials from the database, its marked paths and its log from the kept archive,
 * and what the checks found in it. An accepted session never changes, so the last few are kept.
 */
@ApplicationScoped
class SessionDossiers {
    /** Most attempts of a session that its page reads. */
    static final long MOST_TRIALS = 20_000;

    private static final int KEPT = 16;
    private static final Duration AROUND = Duration.ofHours(1);
    private static final Map<String, String> OWNER_COLUMNS =
            Map.of("trials.csv", "session", "contacts.csv", "session", "climate.csv", "instrument");

    private final PublishedSessions sessions;
    private final Register register;
    private final Archives archives;
    private final Map<Integer, SessionDossier> kept = new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Integer, SessionDossier> eldest) {
            return size() > KEPT;
        }
    };

    SessionDossiers(PublishedSessions sessions, Register register, Archives archives) {
        this.sessions = sessions;
        this.register = register;
        this.archives = archives;
    }

    /**
     * The session of this key.
     *
     * @throws Refusal when none is published
     */
    SessionDossier of(String key) {
        return of(sessions.find(key, MOST_TRIALS)
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND,
                        "session " + key + " is not published: the page of its room lists those that are")));
    }

    /** The session of this number; refused when it is not published. */
    SessionDossier of(int id) {
        return of(sessions.find(id, MOST_TRIALS)
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND,
                        "session " + id + " is not published: GET /api/v1/sessions lists those that are")));
    }

    private SessionDossier of(PublishedSessions.Whole whole) {
        synchronized (kept) {
            SessionDossier known = kept.get(whole.session().id());
            if (known != null) {
                return known;
            }
        }
        SessionDossier made = make(whole);
        synchronized (kept) {
            kept.put(whole.session().id(), made);
        }
        return made;
    }

    private SessionDossier make(PublishedSessions.Whole whole) {
        String sha256 = register.one(whole.contribution()).sha256();
        if (!archives.exists(sha256)) {
            return new SessionDossier(whole, Optional.empty(), List.of());
        }
        JsonNode report =
                ReportView.read(register.reportIfAny(whole.contribution()).orElse("{}"));
        try (ContributionSource source = ContributionSource.of(archives.path(sha256), ArchiveLimits.defaults())) {
            Optional<SessionTraces> traces = SessionTraces.read(source, wanted(whole));
            return new SessionDossier(whole, traces, findings(source, report, whole.entry(), traces));
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "the archive of contribution " + whole.contribution() + " cannot be read", e);
        }
    }

    /** The session with an hour before and after, so that a strip of its climate shows where it came from. */
    private static SessionTraces.Wanted wanted(PublishedSessions.Whole whole) {
        List<Instant> times = Stream.concat(
                        whole.entry().session().startedAt().stream().map(time -> time.toInstant()),
                        whole.trials().stream().map(Trial::startedAt).flatMap(Optional::stream))
                .sorted()
                .toList();
        Instant from = times.isEmpty() ? Instant.MAX : times.get(0).minus(AROUND);
        Instant to = times.isEmpty() ? Instant.MIN : times.get(times.size() - 1).plus(AROUND);
        return new SessionTraces.Wanted(whole.entry().session().id(), from, to);
    }

    private static List<ReportView.Line> findings(
            ContributionSource source, JsonNode report, SessionRecord entry, Optional<SessionTraces> traces)
            throws IOException {
        Map<String, Map<Long, String>> owners = new HashMap<>();
        for (Map.Entry<String, String> file : OWNER_COLUMNS.entrySet()) {
            owners.put(
                    file.getKey(), RowOwners.of(source, file.getKey(), file.getValue(), rows(report, file.getKey())));
        }
        String id = entry.session().id();
        String instrument = entry.session().instrument().orElse("");
        String pointer = "/sessions/" + traces.map(SessionTraces::position).orElse(-1);
        return ReportView.findings(report, finding -> {
            String file = finding.path("file").asText();
            String column = finding.path("column").asText();
            String owner = owners.getOrDefault(file, Map.of())
                    .getOrDefault(finding.path("row").asLong(), "");
            return finding.path("value").asText().equals(id)
                    || column.equals(pointer)
                    || column.startsWith(pointer + "/")
                    || !owner.isEmpty() && owner.equals(file.equals("climate.csv") ? instrument : id);
        });
    }

    private static Set<Long> rows(JsonNode report, String file) {
        return ReportView.elements(report.path("findings"))
                .filter(finding -> finding.path("file").asText().equals(file))
                .map(finding ->
                        finding.path("row").isNumber() ? finding.path("row").asLong() : null)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
    }
}
