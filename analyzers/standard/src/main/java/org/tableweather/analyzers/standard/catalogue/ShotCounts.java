package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.spi.ParameterInfo;

/** How many trials each shot of a pool has, and how many of them a question can use. */
public final class ShotCounts {

    private static final String PARAMETER = "shot";

    private final SortedMap<String, Long> all = new TreeMap<>();
    private final SortedMap<String, Long> usable = new TreeMap<>();

    /**
     * The parameter that asks for one shot.
     *
     * @param what the shot has the most of when it is not set: {@code usable trials}
     */
    public static ParameterInfo parameter(String what) {
        return new ParameterInfo(
                PARAMETER, "id of the shot; when not set, the one with the most " + what, "1", "", List.of());
    }

    /**
     * Counts trials of a shot.
     *
     * @param trials how many more
     * @param usableTrials of these
     */
    public void add(String shot, long trials, long usableTrials) {
        all.merge(shot, trials, Long::sum);
        if (usableTrials > 0) {
            usable.merge(shot, usableTrials, Long::sum);
        }
    }

    /** Whether there are no trials at all. */
    public boolean isEmpty() {
        return all.isEmpty();
    }

    /** Whether some trial cites the shot. */
    public boolean has(String shot) {
        return all.containsKey(shot);
    }

    /** Ids of all shots, in order. */
    public List<String> all() {
        return new ArrayList<>(all.keySet());
    }

    /** Ids of the shots with a usable trial, in order. */
    public List<String> usable() {
        return new ArrayList<>(usable.keySet());
    }

    /** The shot with the most usable trials, the first of several; empty when there is none. */
    public String mostUsable() {
        String best = "";
        long most = 0;
        for (SortedMap.Entry<String, Long> entry : usable.entrySet()) {
            if (entry.getValue() > most) {
                best = entry.getKey();
                most = entry.getValue();
            }
        }
        return best;
    }
}
