package org.tableweather.schema.check;

import java.util.List;

/** Rules of who contributes, from where, and under which licence. */
public final class IdentityChecks {
    private static final CheckGroup GROUP = new CheckGroup("identity");

    public static final Check LICENCE = GROUP.refuse(
            "licence",
            "The licence is an open one for data, by its SPDX id.",
            String.join(", ", OpenLicences.ids()),
            "choose one of these, for instance CC-BY-4.0",
            "SpdxLicences");

    public static final Check ORCID = GROUP.refuse(
            "orcid",
            "An ORCID iD has four groups of four, and its check character is right.",
            "ISO 7064 mod 11-2",
            "copy the iD from your ORCID page, without the address",
            "OrcidStructure");

    public static final Check COUNTRY = GROUP.refuse(
            "country",
            "Countries are ISO 3166-1 alpha-2 codes.",
            "two capital letters of the standard",
            "write NO for Norway, US for the United States ...",
            "ISO3166");

    private IdentityChecks() {}

    static List<Check> all() {
        return GROUP.checks();
    }

    /**
     * Whether the check character of an ORCID iD is right.
     *
     * @param orcid four groups of four digits with dashes, the last may be X
     * @source OrcidStructure
     */
    static boolean isOrcid(String orcid) {
        if (!orcid.matches("\\d{4}-\\d{4}-\\d{4}-\\d{3}[\\dX]")) {
            return false;
        }
        String digits = orcid.replace("-", "");
        int total = 0;
        for (int i = 0; i < 15; i++) {
            total = (total + digits.charAt(i) - '0') * 2;
        }
        int check = (12 - total % 11) % 11;
        return digits.charAt(15) == (check == 10 ? 'X' : (char) ('0' + check));
    }
}
