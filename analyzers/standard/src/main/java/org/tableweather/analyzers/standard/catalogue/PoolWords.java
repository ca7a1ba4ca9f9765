package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is to be said of the data of a pool whether or not there is an answer. */
public final class PoolWords {

    private final String noun;
    private final List<String> words = new ArrayList<>();

    /** None yet; {@code noun} is what the pool counts: trial, attempt. */
    public PoolWords(String noun) {
        this.noun = noun;
    }

    /** That some sessions are made up. */
    public PoolWords invented(long invented, long sessions) {
        if (invented > 0) {
            words.add("Invented data: " + invented + " of " + Figures.counted(sessions, "session")
                    + " are made up for demonstration; no figure here says anything about real tables.");
        }
        return this;
    }

    /** That the climate of some sessions was corrected. */
    public PoolWords corrected(long corrected, long sessions) {
        if (corrected > 0) {
            words.add("The climate of " + corrected + " of " + Figures.counted(sessions, "session")
                    + " was corrected by the calibration of its instrument.");
        }
        return this;
    }

    /** That nobody asked for the shot, and which others there are. */
    public PoolWords chosen(Optional<String> asked, String shot, ShotCounts counts) {
        List<String> others =
                counts.usable().stream().filter(one -> !one.equals(shot)).toList();
        if (asked.isEmpty() && !others.isEmpty()) {
            words.add("Shot " + shot + " was taken because it has the most usable " + noun
                    + "s; others can be set by the parameter shot: " + Figures.listed(others) + ".");
        }
        return this;
    }

    /** That some are left out, if any are. */
    public PoolWords leftOut(long count, String why) {
        if (count > 0) {
            words.add(Figures.counted(count, noun) + " left out: " + why);
        }
        return this;
    }

    /** All so far. */
    public List<String> list() {
        return List.copyOf(words);
    }
}
