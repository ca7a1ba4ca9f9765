package org.tableweather.schema.record;

import java.util.List;
import java.util.Optional;

/**
 * The content of {@code contribution.json}: everything but the rows.
 *
 * @param schemaVersion semver of the format, {@code 1.0}
 * @param title in words
 * @param licence SPDX id
 * @param invented true marks data made up for demonstration; it is shown wherever the data are
 * @param contributor who
 * @param rooms at least one
 * @param tables at least one
 * @param ballSets may be empty
 * @param cues may be empty
 * @param instruments may be empty
 * @param shots own shots beside the built-in catalogue
 * @param sessions at least one
 * @param marks known points on video frames; may be empty
 */
public record Contribution(
        String schemaVersion,
        Optional<String> title,
        String licence,
        Optional<Boolean> invented,
        Contributor contributor,
        List<Room> rooms,
        List<PoolTable> tables,
        List<BallSet> ballSets,
        List<Cue> cues,
        List<Instrument> instruments,
        List<Shot> shots,
        List<Session> sessions,
        List<CameraMarks> marks) {

    public Contribution {
        rooms = rooms == null ? List.of() : List.copyOf(rooms);
        tables = tables == null ? List.of() : List.copyOf(tables);
        ballSets = ballSets == null ? List.of() : List.copyOf(ballSets);
        cues = cues == null ? List.of() : List.copyOf(cues);
        instruments = instruments == null ? List.of() : List.copyOf(instruments);
        shots = shots == null ? List.of() : List.copyOf(shots);
        sessions = sessions == null ? List.of() : List.copyOf(sessions);
        marks = marks == null ? List.of() : List.copyOf(marks);
    }

    /** A contribution without marks on video frames. */
    public Contribution(
            String schemaVersion,
            Optional<String> title,
            String licence,
            Optional<Boolean> invented,
            Contributor contributor,
            List<Room> rooms,
            List<PoolTable> tables,
            List<BallSet> ballSets,
            List<Cue> cues,
            List<Instrument> instruments,
            List<Shot> shots,
            List<Session> sessions) {
        this(
                schemaVersion,
                title,
                licence,
                invented,
                contributor,
                rooms,
                tables,
                ballSets,
                cues,
                instruments,
                shots,
                sessions,
                List.of());
    }
}
