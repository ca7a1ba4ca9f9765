package org.tableweather.server.web;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Which known name was probably meant. */
public final class NearestName {
    private static final int SHARE = 3;

    private NearestName() {}

    /**
     * The known name that the fewest letters set apart, when they are at most a third of what was written.
     *
     * @param written what is not known
     * @param known what is
     */
    public static Optional<String> of(String written, Collection<String> known) {
        String lower = written.toLowerCase(Locale.ROOT);
        Optional<String> nearest = known.stream()
                .min(Comparator.comparingInt((String name) -> distance(lower, name.toLowerCase(Locale.ROOT)))
                        .thenComparing(Comparator.naturalOrder()));
        return nearest.filter(
                name -> distance(lower, name.toLowerCase(Locale.ROOT)) <= Math.max(1, written.length() / SHARE));
    }

    /** Letters to change, leave out or put in. */
    private static int distance(String one, String other) {
        int[] row = new int[other.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= one.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int changed = diagonal + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[other.length()];
    }
}
