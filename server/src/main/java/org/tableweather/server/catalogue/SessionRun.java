package org.tableweather.server.catalogue;

import java.util.ArrayList;
import java.util.List;

/**
 * Sessions with neighbouring numbers: contributed together, so that their trials lie together.
 *
 * @param ids ordered, at least one
 */
record SessionRun(List<Integer> ids) {
    /** Trials of so many other sessions between are cheaper to skip than to go around. */
    private static final int LARGEST_GAP = 8;

    /** Splits ordered numbers at the wide gaps. */
    static List<SessionRun> of(List<Integer> ordered) {
        List<SessionRun> runs = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= ordered.size(); i++) {
            if (i == ordered.size() || ordered.get(i) - ordered.get(i - 1) > LARGEST_GAP) {
                runs.add(new SessionRun(List.copyOf(ordered.subList(from, i))));
                from = i;
            }
        }
        return runs;
    }

    /** Whether numbers between the first and the last are left out. */
    boolean hasGaps() {
        return last() - first() >= ids.size();
    }

    int first() {
        return ids.get(0);
    }

    int last() {
        return ids.get(ids.size() - 1);
    }
}
