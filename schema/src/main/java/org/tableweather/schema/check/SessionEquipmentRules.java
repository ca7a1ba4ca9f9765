package org.tableweather.schema.check;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Cloth;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Cushion;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Session;

/** Judges tables and balls by the days of the sessions that use them. */
final class SessionEquipmentRules {
    private final Contribution contribution;
    private final Findings findings;
    private final Map<String, Integer> tables = new HashMap<>();
    private final Map<String, Integer> ballSets = new HashMap<>();

    private SessionEquipmentRules(Contribution contribution, Findings findings) {
        this.contribution = contribution;
        this.findings = findings;
        for (int i = 0; i < contribution.tables().size(); i++) {
            tables.putIfAbsent(contribution.tables().get(i).id(), i);
        }
        for (int i = 0; i < contribution.ballSets().size(); i++) {
            ballSets.putIfAbsent(contribution.ballSets().get(i).id(), i);
        }
    }

    static void check(Contribution contribution, Findings findings) {
        SessionEquipmentRules rules = new SessionEquipmentRules(contribution, findings);
        List<Session> sessions = contribution.sessions();
        for (int i = 0; i < sessions.size(); i++) {
            rules.bed(sessions.get(i), "/sessions/" + i);
            rules.dates(sessions.get(i));
        }
    }

    private void bed(Session session, String pointer) {
        Integer index = tables.get(session.table());
        boolean heated =
                index != null && contribution.tables().get(index).heated().orElse(false);
        if (heated && session.statedBedC().isEmpty()) {
            findings.add(
                    ClimateChecks.BED_UNREAD,
                    Place.json(pointer + "/bedC"),
                    null,
                    () -> "the table of session " + session.id() + " is heated; how warm its bed was, is not said");
        }
    }

    private void dates(Session session) {
        if (session.startedAt().isEmpty()) {
            return;
        }
        LocalDate day = session.startedAt().get().toLocalDate();
        Integer index = tables.get(session.table());
        if (index != null) {
            PoolTable table = contribution.tables().get(index);
            String pointer = "/tables/" + index;
            later(
                    EquipmentChecks.FITTED_LATER,
                    table.cloth().flatMap(Cloth::fittedOn),
                    day,
                    pointer + "/cloth/fittedOn");
            later(
                    EquipmentChecks.FITTED_LATER,
                    table.cushion().flatMap(Cushion::fittedOn),
                    day,
                    pointer + "/cushion/fittedOn");
        }
        Integer balls = session.ballSet().map(ballSets::get).orElse(null);
        if (balls != null) {
            BallSet set = contribution.ballSets().get(balls);
            later(EquipmentChecks.CLEANED_LATER, set.cleanedOn(), day, "/ballSets/" + balls + "/cleanedOn");
        }
    }

    private void later(Check check, Optional<LocalDate> date, LocalDate day, String pointer) {
        date.filter(day::isBefore)
                .ifPresent(later -> findings.add(
                        check, Place.json(pointer), later.toString(), () -> "after the session of " + day));
    }
}
