package org.tableweather.schema.folder;

import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.GeometryChecks;
import org.tableweather.schema.check.MarkedPathRules;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.geometry.Landing;
import org.tableweather.schema.geometry.MarkingError;
import org.tableweather.schema.geometry.Measured;
import org.tableweather.schema.geometry.PathReducer;
import org.tableweather.schema.geometry.PathReduction;
import org.tableweather.schema.geometry.RailTouch;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.CameraMarks;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.record.Trial;
import org.tableweather.schema.table.TrialColumn;

/** Computes from its marked path what a trial's row leaves empty; what was typed stays, and is compared. */
final class TrialPaths {
    private final SessionIndex sessions;
    private final ContactPaths paths;
    private final Map<Integer, Optional<PathReducer>> reducers = new HashMap<>();
    private final Cameras cameras;
    private final BitSet toldSize = new BitSet();

    TrialPaths(SessionIndex sessions, ContactPaths paths, List<CameraMarks> cameras) {
        this.cameras = new Cameras(cameras);
        this.sessions = sessions;
        this.paths = paths;
    }

    /** Whether a trial has a path; it is then known to have a row. */
    boolean has(int session, String trial) {
        return session >= 0 && paths.see(session, trial) != null;
    }

    /**
     * Completes the figures of a trial.
     *
     * @param typed as its row says
     * @param shot its shot; null when it is not known
     * @param values by position of {@link TrialColumn}: empty ones are filled
     * @return whether it has a path that was reduced
     */
    boolean complete(int session, Trial typed, Shot shot, double[] values, long row, Findings findings) {
        ContactPaths.Path path = paths.see(session, typed.trial());
        if (path == null || path.isDamaged()) {
            return false;
        }
        Map<Integer, Integer> rowOf = new HashMap<>();
        List<Contact> contacts = paths.contacts(path, typed.session(), typed.trial(), rowOf::put);
        MarkedPathRules rules = new MarkedPathRules(typed, row, rowOf, findings);
        rules.numbers(contacts);
        Optional<PathReducer> reducer = reducers.computeIfAbsent(session, this::reducer);
        if (reducer.isEmpty()) {
            tellSize(session, typed, findings);
            return false;
        }
        boolean ofKind = shot != null && shot.kind() == typed.kind();
        Optional<PathReduction> reduction =
                reduced(session, contacts, ofKind ? Optional.of(shot) : Optional.empty(), findings);
        return reduction.isPresent()
                && reduction
                        .get()
                        .fold(
                                reduced -> {
                                    boolean hasRails = ofKind && !shot.rails().isEmpty();
                                    rules.check(reduced, hasRails);
                                    fill(typed.kind(), contacts, reduced, reduced.followsShot() || !hasRails, values);
                                    return true;
                                },
                                refused -> {
                                    rules.refuse(refused);
                                    return false;
                                });
    }

    /** Empty when the marks are on a frame that says nothing of the table. */
    private Optional<PathReduction> reduced(
            int session, List<Contact> contacts, Optional<Shot> shot, Findings findings) {
        PathReducer reducer = reducers.get(session).orElseThrow();
        if (Cameras.areFrames(contacts)) {
            return cameras.path(contacts, sessions.tableSize(session).orElseThrow(), findings)
                    .map(path -> reducer.reduce(path, shot));
        }
        return Optional.of(shot.isPresent() ? reducer.reduce(contacts, shot.get()) : reducer.reduce(contacts));
    }

    private Optional<PathReducer> reducer(int session) {
        Optional<TableSize> size = sessions.tableSize(session);
        return size.map(table -> new PathReducer(table, MarkingError.byEye(table)));
    }

    private void tellSize(int session, Trial typed, Findings findings) {
        if (!toldSize.get(session)) {
            toldSize.set(session);
            findings.add(
                    GeometryChecks.TABLE_UNSTATED,
                    Place.file(ContactRows.FILE),
                    typed.session(),
                    () -> "the size of the table of session " + typed.session()
                            + " is not stated: its paths were not reduced");
        }
    }

    private static void fill(
            Kind kind, List<Contact> contacts, PathReduction.Reduced path, boolean followed, double[] values) {
        Optional<RailTouch> first = path.touches().stream().findFirst();
        put(
                values,
                TrialColumn.APPROACH_ANGLE_DEG,
                TrialColumn.APPROACH_ANGLE_U_DEG,
                first.flatMap(RailTouch::approachAngleDeg));
        put(
                values,
                TrialColumn.APPROACH_SPEED_MPS,
                TrialColumn.APPROACH_SPEED_U_MPS,
                first.flatMap(RailTouch::approachSpeedMps));
        put(
                values,
                TrialColumn.REBOUND_ANGLE_DEG,
                TrialColumn.REBOUND_ANGLE_U_DEG,
                first.flatMap(RailTouch::reboundAngleDeg));
        put(
                values,
                TrialColumn.REBOUND_SPEED_MPS,
                TrialColumn.REBOUND_SPEED_U_MPS,
                first.flatMap(RailTouch::reboundSpeedMps));
        if (path.counted() == 1 && path.finalReboundAngleDeg().isPresent()) {
            // after one rail there is one angle, the typed one if it was typed
            double only = values[TrialColumn.REBOUND_ANGLE_DEG.ordinal()];
            double uncertainty = values[TrialColumn.REBOUND_ANGLE_U_DEG.ordinal()];
            put(
                    values,
                    TrialColumn.FINAL_REBOUND_ANGLE_DEG,
                    TrialColumn.FINAL_REBOUND_ANGLE_U_DEG,
                    Optional.of(new Measured(only, uncertainty)));
        } else {
            put(
                    values,
                    TrialColumn.FINAL_REBOUND_ANGLE_DEG,
                    TrialColumn.FINAL_REBOUND_ANGLE_U_DEG,
                    path.finalReboundAngleDeg());
        }
        put(
                values,
                TrialColumn.LANDING_OFFSET_DIA,
                TrialColumn.LANDING_OFFSET_U_DIA,
                path.landing().map(Landing::offsetDia));
        if (path.counted() > 0 && followed) {
            put(values, TrialColumn.RAILS, TrialColumn.RAILS, Optional.of(new Measured(path.counted(), 0)));
        }
        boolean rests = contacts.stream().anyMatch(contact -> contact.point() == Contact.Point.REST);
        if (kind == Kind.SPEED && rests) {
            put(values, TrialColumn.RUN_OUT_M, TrialColumn.RUN_OUT_U_M, Optional.of(path.pathLengthM()));
        }
    }

    private static void put(double[] values, TrialColumn column, TrialColumn uncertainty, Optional<Measured> figure) {
        int slot = column.ordinal();
        if (!Double.isNaN(values[slot]) || figure.isEmpty()) {
            return;
        }
        double value = figure.get().value();
        if (value >= column.min() && value <= column.max()) {
            values[slot] = value;
            double u = figure.get().standardUncertainty();
            if (uncertainty != column && u <= uncertainty.max()) {
                values[uncertainty.ordinal()] = u;
            }
        }
    }

    /** Reports paths whose trial has no row. */
    void reportUnseen(Findings findings) {
        paths.unseen((session, trial, row) -> findings.add(
                GeometryChecks.CONTACT_TRIAL,
                Place.cell(ContactRows.FILE, row, "trial"),
                trial,
                () -> "trials.csv has no trial " + trial + " of session " + sessions.id(session)));
    }
}
