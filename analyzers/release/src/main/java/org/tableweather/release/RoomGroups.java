package org.tableweather.release;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.tableweather.schema.digest.Sha256;

/**
 * Puts rooms into groups of about equal size, each a folder: the first bits of the SHA-256 of the room key.
 *
 * @param bits how many of them; 2 to that power is the number of groups
 * @source FIPS180
 */
record RoomGroups(int bits) {
    /** A task's worth of work on one core: a second or so. */
    static final long TRIALS_PER_GROUP = 1_000_000;

    private static final int MOST_BITS = 9;
    private static final int HEX_DIGITS = 3;
    private static final int HEX_BITS = 12;

    /** So many that a group has about so many trials; at most 512. */
    static RoomGroups forTrials(long trials, long trialsPerGroup) {
        int bits = 0;
        while (bits < MOST_BITS && trials > trialsPerGroup << bits) {
            bits++;
        }
        return new RoomGroups(bits);
    }

    int count() {
        return 1 << bits;
    }

    /** The group of a room: three decimal digits. */
    String of(String roomKey) {
        String hex = Sha256.hex(roomKey.getBytes(StandardCharsets.UTF_8)).substring(0, HEX_DIGITS);
        return String.format(Locale.ROOT, "%03d", Integer.parseInt(hex, 16) >> (HEX_BITS - bits));
    }
}
