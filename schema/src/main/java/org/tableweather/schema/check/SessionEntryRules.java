package org.tableweather.schema.check;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.Session;

/** Judges the entries of sessions and instruments, before any trial is read. */
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
        List<Instrument> instruments = contribution.instruments();
        for (int i = 0; i < instruments.size(); i++) {
            rules.calibrated(instruments.get(i), "/instruments/" + i);
        }
    }

    private void settled(Session session, String pointer) {
        if (session.settledFrom().isEmpty() || session.startedAt().isEmpty()) {
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

    private void calibrated(Instrument instrument, String pointer) {
        if (instrument.quantities().contains("humidity")
                && instrument.calibrations().stream()
                        .noneMatch(calibration -> calibration.quantity().equals("humidity"))) {
            findings.add(
                    ClimateChecks.UNCALIBRATED,
                    Place.json(pointer + "/calibrations"),
                    null,
                    () -> "instrument " + instrument.id() + " was never compared; hygrometers in one room have been"
                            + " seen 4 to 15 %RH apart");
        }
    }
}
