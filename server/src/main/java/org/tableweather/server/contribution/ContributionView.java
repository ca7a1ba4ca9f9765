package org.tableweather.server.contribution;

import java.time.Instant;
import java.util.Optional;

/**
 * A contribution as the public sees it.
 *
 * @param id its number here
 * @param sha256 of the archive: its identity
 * @param bytes length of the archive
 * @param state where it stands
 * @param title in words
 * @param licence SPDX id
 * @param contributor the name they chose
 * @param invented whether it is made up for demonstration
 * @param rooms stored
 * @param sessions stored
 * @param trials stored
 * @param receivedAt when the archive came
 * @param decidedAt when it was checked, accepted or refused
 * @param withdrawnAt when it was taken back
 * @param withdrawalReason why, as stated
 * @param report path of the check report
 * @param archive path of the archive
 */
record ContributionView(
        long id,
        String sha256,
        long bytes,
        State state,
        Optional<String> title,
        Optional<String> licence,
        Optional<String> contributor,
        boolean invented,
        int rooms,
        int sessions,
        long trials,
        Instant receivedAt,
        Optional<Instant> decidedAt,
        Optional<Instant> withdrawnAt,
        Optional<String> withdrawalReason,
        String report,
        String archive) {}
