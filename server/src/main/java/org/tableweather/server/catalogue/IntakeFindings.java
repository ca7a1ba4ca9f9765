package org.tableweather.server.catalogue;

import java.util.Optional;
import java.util.OptionalLong;
import org.tableweather.schema.check.CatalogueChecks;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.Finding;

/** Findings that need to know what is in the catalogue already. */
final class IntakeFindings {
    private IntakeFindings() {}

    static Finding room(int index, String key) {
        return finding(
                CatalogueChecks.ROOM_OF_ANOTHER_ACCOUNT,
                "contribution.json",
                "/rooms/" + index + "/id",
                key,
                "room " + key + " was first contributed from another account");
    }

    static Finding duplicate(int index, String sessionKey, long contribution, SessionTable.Holder holder) {
        String where = holder.contributionId() == contribution
                ? "this contribution"
                : "contribution " + holder.contributionId();
        return finding(
                CatalogueChecks.DUPLICATE_SESSION,
                "contribution.json",
                "/sessions/" + index + "/id",
                sessionKey,
                "session " + sessionKey + " with all its trials is in " + where + " already, as "
                        + holder.sessionKey());
    }

    static Finding unstorable(String message) {
        Check check = CatalogueChecks.UNSTORABLE_VALUE;
        return new Finding(
                check.id(),
                check.severity(),
                "contribution.json, trials.csv",
                OptionalLong.empty(),
                Optional.empty(),
                Optional.empty(),
                check.bound(),
                message,
                check.remedy(),
                check.reference());
    }

    private static Finding finding(Check check, String file, String pointer, String value, String message) {
        return new Finding(
                check.id(),
                check.severity(),
                file,
                OptionalLong.empty(),
                Optional.of(pointer),
                Optional.of(value),
                check.bound(),
                message,
                check.remedy(),
                check.reference());
    }
}
