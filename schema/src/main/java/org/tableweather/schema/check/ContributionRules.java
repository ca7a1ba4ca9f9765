package org.tableweather.schema.check;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Cue;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Shot;

/** Judges what {@code contribution.json} says: ids, references, identity, equipment, sessions. */
public final class ContributionRules {
    private static final Set<String> COUNTRIES = Set.of(Locale.getISOCountries());

    private final Contribution contribution;
    private final Findings findings;

    private ContributionRules(Contribution contribution, Findings findings) {
        this.contribution = contribution;
        this.findings = findings;
    }

    /**
     * Judges.
     *
     * @param contribution as far as it could be understood
     * @param findings takes what is found
     */
    public static void check(Contribution contribution, Findings findings) {
        ContributionRules rules = new ContributionRules(contribution, findings);
        rules.identity();
        rules.ids();
        rules.references();
        EquipmentRules.check(contribution, findings);
        SessionEntryRules.check(contribution, findings);
    }

    private void identity() {
        String licence = contribution.licence();
        if (!licence.isEmpty() && !OpenLicences.ids().contains(licence)) {
            findings.add(
                    IdentityChecks.LICENCE,
                    Place.json("/licence"),
                    licence,
                    () -> "not the SPDX id of an open licence for data that is known here");
        }
        contribution.contributor().orcid().ifPresent(orcid -> {
            if (!IdentityChecks.isOrcid(orcid) && findings.count(IdentityChecks.ORCID) == 0) {
                findings.add(
                        IdentityChecks.ORCID,
                        Place.json("/contributor/orcid"),
                        orcid,
                        () -> "the check character is wrong: a digit was mistyped");
            }
        });
        List<Room> rooms = contribution.rooms();
        for (int i = 0; i < rooms.size(); i++) {
            String pointer = "/rooms/" + i + "/country";
            rooms.get(i)
                    .country()
                    .filter(code -> code.matches("[A-Z]{2}") && !COUNTRIES.contains(code))
                    .ifPresent(code -> findings.add(
                            IdentityChecks.COUNTRY, Place.json(pointer), code, () -> "no country has this code"));
        }
    }

    private void ids() {
        unique("rooms", contribution.rooms(), Room::id);
        unique("tables", contribution.tables(), PoolTable::id);
        unique("ballSets", contribution.ballSets(), BallSet::id);
        unique("cues", contribution.cues(), Cue::id);
        unique("instruments", contribution.instruments(), Instrument::id);
        unique("shots", contribution.shots(), Shot::id);
        unique("sessions", contribution.sessions(), Session::id);
    }

    private <T> void unique(String list, List<T> entries, Function<T, String> id) {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < entries.size(); i++) {
            String value = id.apply(entries.get(i));
            if (!seen.add(value) && !value.isEmpty()) {
                findings.add(
                        StructureChecks.DUPLICATE_ID,
                        Place.json("/" + list + "/" + i + "/id"),
                        value,
                        () -> "the id occurs more than once in " + list);
            }
        }
    }

    private void references() {
        Set<String> rooms = idsOf(contribution.rooms(), Room::id);
        List<PoolTable> tables = contribution.tables();
        for (int i = 0; i < tables.size(); i++) {
            refer("/tables/" + i + "/room", Optional.of(tables.get(i).room()), rooms, "rooms");
        }
        Set<String> tableIds = idsOf(tables, PoolTable::id);
        Set<String> ballSets = idsOf(contribution.ballSets(), BallSet::id);
        Set<String> cues = idsOf(contribution.cues(), Cue::id);
        Set<String> instruments = idsOf(contribution.instruments(), Instrument::id);
        List<Session> sessions = contribution.sessions();
        for (int i = 0; i < sessions.size(); i++) {
            String pointer = "/sessions/" + i + "/";
            Session session = sessions.get(i);
            refer(pointer + "table", Optional.of(session.table()), tableIds, "tables");
            refer(pointer + "ballSet", session.ballSet(), ballSets, "ballSets");
            refer(pointer + "cue", session.cue(), cues, "cues");
            refer(pointer + "instrument", session.instrument(), instruments, "instruments");
        }
    }

    private void refer(String pointer, Optional<String> id, Set<String> known, String list) {
        id.filter(value -> !value.isEmpty() && !known.contains(value))
                .ifPresent(value -> findings.add(
                        StructureChecks.UNKNOWN_REFERENCE,
                        Place.json(pointer),
                        value,
                        "the id of an entry of " + list,
                        () -> "no entry of " + list + " has this id"));
    }

    private static <T> Set<String> idsOf(List<T> entries, Function<T, String> id) {
        return entries.stream().map(id).collect(Collectors.toSet());
    }
}
