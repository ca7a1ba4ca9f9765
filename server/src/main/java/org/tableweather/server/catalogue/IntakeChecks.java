package org.tableweather.server.catalogue;

import java.util.Optional;
import java.util.OptionalLong;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.Finding;
import org.tableweather.schema.check.Severity;

/** The checks that need to know what is in the catalogue already. */
final class IntakeChecks {
    static final Check ROOM_OF_ANOTHER_ACCOUNT = new Check(
            "catalogue.room-of-another-account",
            Severity.REFUSE,
            "A room belongs to the account that first contributed from it.",
            "one account per room key",
            "use that account, or change the contributor's name or the room's id if it is another room",
            "CommonPractice");

    static final Check DUPLICATE_SESSION = new Check(
            "statistics.duplicate-session",
            Severity.REFUSE,
            "No session is pooled twice.",
            "one session per digest of its content",
            "leave the session out, or withdraw the contribution that holds it",
            "CommonPractice");

    static final Check UNSTORABLE = new Check(
            "catalogue.unstorable-value",
            Severity.REFUSE,
            "Every value has a place in the database.",
            "texts without U+0000; years from 4713 BC to 294276 AD",
            "correct or remove the value",
            "CommonPractice");

    private IntakeChecks() {}

    static Finding room(int index, String key) {
        return finding(
                ROOM_OF_ANOTHER_ACCOUNT,
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
                DUPLICATE_SESSION,
                "contribution.json",
                "/sessions/" + index + "/id",
                sessionKey,
                "session " + sessionKey + " with all its trials is in " + where + " already, as "
                        + holder.sessionKey());
    }

    static Finding unstorable(String message) {
        return new Finding(
                UNSTORABLE.id(),
                UNSTORABLE.severity(),
                "contribution.json, trials.csv",
                OptionalLong.empty(),
                Optional.empty(),
                Optional.empty(),
                UNSTORABLE.bound(),
                message,
                UNSTORABLE.remedy(),
                UNSTORABLE.reference());
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
