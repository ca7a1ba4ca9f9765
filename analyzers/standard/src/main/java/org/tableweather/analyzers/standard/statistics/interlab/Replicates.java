package org.tableweather.analyzers.standard.statistics.interlab;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The number of results that the bounds are made for when laboratories have unlike numbers. */
final class Replicates {

    private Replicates() {}

    /** The commonest number of results, of several the smallest. */
    static long commonest(List<Laboratory> laboratories) {
        Map<Long, Integer> counts = new TreeMap<>();
        for (Laboratory laboratory : laboratories) {
            counts.merge(laboratory.n(), 1, Integer::sum);
        }
        long commonest = 0;
        int most = 0;
        for (Map.Entry<Long, Integer> count : counts.entrySet()) {
            if (count.getValue() > most) {
                most = count.getValue();
                commonest = count.getKey();
            }
        }
        return commonest;
    }
}
