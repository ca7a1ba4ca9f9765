package org.tableweather.schema.check;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Session;

/** Judges the entries of sessions, before any trial is read. */
final class SessionEntryRules {
    private static final Duration SETTLING = Duration.ofHours(2);

    private final Findings findings;

    private SessionEntryRules(Findings findings) {
        this.findings = findings;
    }

    static void check(Contribution contribution, Findings findings) {
        SessionEntryRules rules = new SessionEntryRules(findings);
        List<Session> sessions = contribution.sessions();
        for (int i = 0; i < sessions.size(); i++) {
            String pointer = "/sessions/" + i;
            Session session = sessions.get(i);
            rules.settled(session, pointer);
            rules.attempts(session, pointer);
            rules.stated(session, pointer);
        }
        rules.sameStart(sessions);
        SessionEquipmentRules.check(contribution, findings);
        InstrumentRules.check(contribution, findings);
    }

    private void sameStart(List<Session> sessions) {
        Map<String, String> seen = new HashMap<>();
        for (int i = 0; i < sessions.size(); i++) {
            Session session = sessions.get(i);
            String pointer = "/sessions/" + i + "/startedAt";
            session.startedAt().ifPresent(time -> {
                String other = seen.putIfAbsent(session.table() + " " + time.toInstant(), session.id());
                if (other != null) {
                    findings.add(
                            ProtocolChecks.SESSIONS_AT_ONCE,
                            Place.json(pointer),
                            time.toString(),
                            () -> "session " + other + " of this table starts at the same time");
                }
            });
        }
    }

    private void settled(Session session, String pointer) {
        if (session.settledFrom().isEmpty() || session.startedAt().isEmpty()) {
            if (findings.count(StructureChecks.TIME) + findings.count(StructureChecks.TIME_ZONE) > 0) {
                return; // a time is there that could not be read
            }
            findings.add(
                    ProtocolChecks.SETTLED_UNSTATED,
                    Place.json(pointer + "/settledFrom"),
                    null,
                    () -> "session " + session.id() + " does not say how long its climate was held");
            return;
        }
        Duration held = Duration.between(
                session.settledFrom().get(), session.startedAt().get());
        Place place = Place.json(pointer + "/settledFrom");
        String value = session.settledFrom().get().toString();
        if (held.isNegative()) {
            findings.add(ProtocolChecks.SETTLED_AFTER, place, value, () -> "after the first attempt");
        } else if (held.compareTo(SETTLING) < 0) {
            findings.add(
                    ProtocolChecks.SETTLED_SHORT,
                    place,
                    value,
                    () -> "the climate was held for " + held.toMinutes() + " min before the first attempt");
        }
    }

    private void attempts(Session session, String pointer) {
        if (session.blinded().filter(blinded -> !blinded).isPresent()) {
            findings.add(
                    ProtocolChecks.NOT_BLINDED,
                    Place.json(pointer + "/blinded"),
                    "false",
                    () -> "who marked session " + session.id() + " knew its climate");
        }
        if (session.warmUpTrials().isPresent() && session.warmUpTrials().getAsInt() == 0) {
            findings.add(
                    ProtocolChecks.NO_WARM_UP,
                    Place.json(pointer + "/warmUpTrials"),
                    "0",
                    () -> "session " + session.id() + " logged its first attempts as data");
        }
        Optional<Boolean> every = session.everyAttemptLogged();
        Place place = Place.json(pointer + "/everyAttemptLogged");
        if (every.isEmpty()) {
            findings.add(
                    ProtocolChecks.EVERY_ATTEMPT_UNSTATED,
                    place,
                    null,
                    () -> "session " + session.id() + " does not say whether every attempt was logged");
        } else if (!every.get()) {
            findings.add(ProtocolChecks.EVERY_ATTEMPT, place, "false", () -> "attempts were left out");
        }
    }

    private void stated(Session session, String pointer) {
        agree(session.tempC(), session.tempF(), pointer + "/tempF");
        agree(session.bedC(), session.bedF(), pointer + "/bedF");
        if (session.instrument().isEmpty()) {
            findings.add(
                    ClimateChecks.NO_INSTRUMENT,
                    Place.json(pointer + "/instrument"),
                    null,
                    () -> "session " + session.id() + " does not say what read its climate");
        }
    }

    private void agree(OptionalDouble celsius, OptionalDouble fahrenheit, String pointer) {
        if (celsius.isEmpty() || fahrenheit.isEmpty()) {
            return;
        }
        double converted = (fahrenheit.getAsDouble() - 32) / 1.8;
        if (Math.abs(converted - celsius.getAsDouble()) > 0.1) {
            findings.add(
                    UnitChecks.DISAGREE,
                    Place.json(pointer),
                    Double.toString(fahrenheit.getAsDouble()),
                    () -> fahrenheit.getAsDouble() + " °F are " + Math.round(converted * 100) / 100.0 + " °C, but "
                            + celsius.getAsDouble() + " °C is written beside it");
        }
    }
}
