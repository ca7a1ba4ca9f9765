package org.tableweather.schema.check;

import java.util.ArrayList;
import java.util.List;

/** Rules that compare a contribution with what a server holds already; only a server can judge by them. */
public final class CatalogueChecks {
    private static final CheckGroup GROUP = new CheckGroup("catalogue");
    private static final CheckGroup STATISTICS = new CheckGroup("statistics");

    public static final Check ROOM_OF_ANOTHER_ACCOUNT = GROUP.refuse(
            "room-of-another-account",
            "A room belongs to the account that first contributed from it.",
            "one account per room key, which is the contributor's ORCID iD or name, a slash, and the room's id",
            "use that account, or change the contributor's name or the room's id if it is another room",
            "CommonPractice");

    public static final Check UNSTORABLE_VALUE = GROUP.refuse(
            "unstorable-value",
            "Every value has a place in the database.",
            "texts without U+0000; times from 4713 BC to 294276 AD",
            "correct or remove the value",
            "CommonPractice");

    public static final Check DUPLICATE_SESSION = STATISTICS.refuse(
            "duplicate-session",
            "No session is pooled twice.",
            "one session per digest of its content",
            "leave the session out, or withdraw the contribution that holds it",
            "CommonPractice");

    private CatalogueChecks() {}

    static List<Check> all() {
        List<Check> all = new ArrayList<>(GROUP.checks());
        all.addAll(STATISTICS.checks());
        return all;
    }
}
