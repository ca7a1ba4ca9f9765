package org.tableweather.server.release;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * A release as the database knows it.
 *
 * @param number from 1
 * @param title in words
 * @param date of the release
 * @param state where it stands
 * @param requestedAt when its contributions were fixed
 * @param frozenAt when it was complete
 * @param manifestSha256 identifies it
 * @param failure why it could not be built
 */
record StoredRelease(
        int number,
        String title,
        LocalDate date,
        ReleaseState state,
        Instant requestedAt,
        Optional<Instant> frozenAt,
        Optional<String> manifestSha256,
        Optional<String> failure) {}
