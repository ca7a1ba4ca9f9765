package org.tableweather.schema.check;

import java.util.List;

/**
 * Licences under which data can be pooled, by SPDX id: free to use, change and share, with at most attribution and
 * share-alike. Licences that forbid commerce or change are not open.
 *
 * @source SpdxLicences
 */
final class OpenLicences {
    private static final List<String> IDS = List.of(
            "CC0-1.0",
            "CC-BY-2.0",
            "CC-BY-2.5",
            "CC-BY-3.0",
            "CC-BY-4.0",
            "CC-BY-SA-2.0",
            "CC-BY-SA-2.5",
            "CC-BY-SA-3.0",
            "CC-BY-SA-4.0",
            "ODbL-1.0",
            "ODC-By-1.0",
            "PDDL-1.0",
            "CDLA-Permissive-1.0",
            "CDLA-Permissive-2.0",
            "CDLA-Sharing-1.0",
            "DL-DE-BY-2.0",
            "DL-DE-ZERO-2.0",
            "OGL-UK-3.0",
            "etalab-2.0");

    private OpenLicences() {}

    static List<String> ids() {
        return IDS;
    }
}
