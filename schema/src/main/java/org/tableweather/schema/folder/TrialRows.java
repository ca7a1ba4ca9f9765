package org.tableweather.schema.folder;

import java.io.IOException;
import java.time.Instant;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;
import org.tableweather.schema.check.TrialRules;
import org.tableweather.schema.check.UnitChecks;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.OutcomeUncertainty;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.record.Trial;
import org.tableweather.schema.table.TrialColumn;

/** Reads {@code trials.csv}: cells into a trial, with its climate, for a receiver. */
final class TrialRows extends CheckedRows {
    static final String FILE = "trials.csv";
    private static final int COLUMNS = TrialColumn.values().length;

    /** Takes trials that were read. */
    interface Receiver {
        /** A row that belongs to this session but was refused. */
        void refused(int session);

        /** A trial and its row. */
        void accept(int session, Trial trial, long row) throws IOException;
    }

    private final SessionIndex sessions;
    private final Receiver receiver;
    private final Optional<TrialPaths> paths;
    private final Set<Kind> kindsWithoutColumn = EnumSet.noneOf(Kind.class);
    private final double[] values = new double[COLUMNS];
    private TrialColumn[] columns = new TrialColumn[0];
    private int[] slots = new int[0];
    private double[] least = new double[0];
    private double[] most = new double[0];
    private Header<TrialColumn> header;
    private boolean uncertainStated;
    private boolean wanting;
    private boolean marked;

    private String session = "";
    private String trial = "";
    private String shot = "";
    private String ball = "";
    private String note = "";
    private Kind kind;
    private Kind lastKind = Kind.REBOUND;
    private Made made = Made.NOT_STATED;
    private boolean timed;
    private long second;
    private Instant startedAt;

    TrialRows(SessionIndex sessions, Optional<TrialPaths> paths, Receiver receiver, Findings findings) {
        super(FILE, findings);
        this.sessions = sessions;
        this.receiver = receiver;
        this.paths = paths;
    }

    @Override
    protected void header(List<String> names, long row) {
        header = new Header<>(FILE, TrialColumn.all(), findings);
        columns = header.match(names, row).toArray(new TrialColumn[0]);
        wanting = header.isWanting();
        slots = new int[columns.length];
        least = new double[columns.length];
        most = new double[columns.length];
        for (int i = 0; i < columns.length; i++) {
            slots[i] = isPlain(columns[i]) ? columns[i].ordinal() : -1;
            least[i] = columns[i] == null ? 0 : columns[i].min();
            most[i] = columns[i] == null ? 0 : columns[i].max();
        }
        uncertainStated = TrialColumn.uncertainties().stream().anyMatch(header::has);
        for (Kind each : Kind.values()) {
            if (TrialColumn.outcomes(each).stream().noneMatch(header::has)) {
                kindsWithoutColumn.add(each);
            }
        }
    }

    /** Whether cells of this column are numbers to be kept as they are. */
    private boolean isPlain(TrialColumn column) {
        if (column == null || !column.isNumber() || column.isCount() || column.standard() != column) {
            return false;
        }
        TrialColumn other = alternativeOf(column);
        return other == column || !header.has(other);
    }

    @Override
    protected void begin() {
        clean();
        Arrays.fill(values, Double.NaN);
        session = "";
        trial = "";
        shot = "";
        ball = "";
        note = "";
        kind = null;
        made = Made.NOT_STATED;
        timed = false;
    }

    @Override
    protected void cell(int column, char[] buffer, int from, int to) {
        int slot = slots[column];
        if (slot < 0) {
            unusual(column, buffer, from, to);
            return;
        }
        double value = decimals.parse(buffer, from, to);
        values[slot] = value >= least[column] && value <= most[column]
                ? value
                : number(columns[column], buffer, from, to, value);
    }

    /** Any cell but a number in the unit of the records. */
    private void unusual(int column, char[] buffer, int from, int to) {
        TrialColumn known = columns[column];
        if (known == null) {
            ignore(column, buffer, from, to);
        } else if (known.isNumber()) {
            quantity(known, number(known, buffer, from, to));
        } else {
            word(known, buffer, from, to);
        }
    }

    private void word(TrialColumn column, char[] buffer, int from, int to) {
        switch (column) {
            case SESSION -> session = text(column, buffer, from, to);
            case TRIAL -> trial = freshText(column, buffer, from, to);
            case SHOT -> shot = text(column, buffer, from, to);
            case BALL -> ball = text(column, buffer, from, to);
            case NOTE -> note = text(column, buffer, from, to);
            case KIND -> kind = kind(text(column, buffer, from, to));
            case MADE -> made = made(text(column, buffer, from, to));
            case STARTED_AT -> {
                timed = time(column, buffer, from, to);
                if (timed) {
                    second = times.epochSecond();
                    startedAt = times.instant();
                }
            }
            default -> throw new IllegalStateException("no reading for " + column);
        }
    }

    private void quantity(TrialColumn column, double value) {
        TrialColumn standard = column.standard();
        int slot = standard.ordinal();
        double converted = column == standard ? value : column.toStandard(value);
        double other = values[slot];
        if (!Double.isNaN(other) && !Double.isNaN(converted)) {
            TrialColumn alternative = header.has(column) && column != standard ? column : alternativeOf(standard);
            if (!(Math.abs(other - converted) <= alternative.tolerance())) {
                refuse(
                        UnitChecks.DISAGREE,
                        alternative,
                        Double.toString(value),
                        UnitChecks.DISAGREE.bound(),
                        () -> converted + " and " + other + " " + standard.unit() + " stand side by side");
            }
        }
        if (Double.isNaN(other) || column == standard && !Double.isNaN(converted)) {
            values[slot] = converted;
        }
        if (column.isCount() && value != Math.rint(value)) {
            refuse(
                    UnitChecks.COUNT,
                    column,
                    Double.toString(value),
                    "a whole number",
                    () -> value + " is not a whole number");
        }
    }

    private static TrialColumn alternativeOf(TrialColumn standard) {
        return TrialColumn.all().stream()
                .filter(column -> column != standard && column.standard() == standard)
                .findFirst()
                .orElse(standard);
    }

    private Kind kind(String name) {
        if (name.equals(lastKind.schemaName())) {
            return lastKind;
        }
        Optional<Kind> known = Kind.of(name.toLowerCase(Locale.ROOT));
        if (known.isEmpty()) {
            refuse(
                    StructureChecks.CHOICE,
                    TrialColumn.KIND,
                    name,
                    "one of rebound, bank, kick, speed, break, throw, deflection, hop",
                    () -> "'" + name + "' is no kind of trial");
            return null;
        }
        lastKind = known.get();
        return lastKind;
    }

    private Made made(String word) {
        if (word.equals("yes") || word.equals("no")) {
            return word.length() == 3 ? Made.YES : Made.NO;
        }
        return switch (word.toLowerCase(Locale.ROOT)) {
            case "yes", "y", "true", "1", "made" -> Made.YES;
            case "no", "n", "false", "0", "missed" -> Made.NO;
            default -> {
                refuse(
                        StructureChecks.CHOICE,
                        TrialColumn.MADE,
                        word,
                        "one of yes, no, true, false, 1, 0, made, missed",
                        () -> "'" + word + "' says neither made nor missed");
                yield Made.NOT_STATED;
            }
        };
    }

    @Override
    protected void end(int cells, int extra) throws IOException {
        checkWidth(cells, extra);
        checkRequired();
        int index = sessions.find(session);
        if (index == SessionIndex.UNKNOWN && !isRefused() && !session.isEmpty()) {
            String id = session;
            refuse(
                    StructureChecks.UNKNOWN_SESSION,
                    TrialColumn.SESSION,
                    id,
                    StructureChecks.UNKNOWN_SESSION.bound(),
                    () -> "contribution.json has no session " + id);
        }
        Shot definition = sessions.shot(shot);
        if (definition == null && !isRefused() && !shot.isEmpty() && !sessions.toleratesShot(shot)) {
            String id = shot;
            refuse(
                    StructureChecks.UNKNOWN_SHOT,
                    TrialColumn.SHOT,
                    id,
                    StructureChecks.UNKNOWN_SHOT.bound(),
                    () -> "no shot " + id + " in the catalogue or in contribution.json");
        }
        if (index < 0) {
            return;
        }
        if (isRefused() || kind == null || wanting) {
            isMarked();
            receiver.refused(index);
        } else {
            hand(index, definition);
        }
    }

    private void checkRequired() {
        if (isRefused()) {
            return;
        }
        requireIfThere(TrialColumn.SESSION, !session.isEmpty());
        requireIfThere(TrialColumn.TRIAL, !trial.isEmpty());
        requireIfThere(TrialColumn.SHOT, !shot.isEmpty());
        requireIfThere(TrialColumn.KIND, kind != null);
        if (kind != null && kindsWithoutColumn.contains(kind) && !isMarked()) {
            kindsWithoutColumn.remove(kind);
            Kind wanting = kind;
            String names = String.join(
                    " or ",
                    TrialColumn.outcomes(kind).stream().map(TrialColumn::header).toList());
            findings.add(
                    StructureChecks.OUTCOME_COLUMN,
                    Place.row(FILE, row()),
                    kind.schemaName(),
                    "the column " + names,
                    () -> "there are trials of kind " + wanting.schemaName() + ", but no column " + names);
        }
    }

    /** Whether contacts may give an outcome. */
    private boolean isMarked() {
        return paths.isPresent() && paths.get().has(sessions.find(session), trial);
    }

    private void requireIfThere(TrialColumn column, boolean filled) {
        if (!filled && header.has(column)) {
            require(column, false);
        }
    }

    private void hand(int index, Shot definition) throws IOException {
        if (!sessions.wants(index)) {
            return;
        }
        ClimateLog log = sessions.log(index);
        long sought = timed ? second : sessions.startSecond(index);
        boolean covered = log != null && sought != SessionIndex.NO_TIME && log.seek(sought);
        double logTemp = covered ? log.tempAt(sought) : Double.NaN;
        double logRh = covered ? log.rhAt(sought) : Double.NaN;
        Climate climate = sessions.climate(index, value(TrialColumn.TEMP_C), value(TrialColumn.RH_PCT), logTemp, logRh);
        Optional<Instant> time = timed ? Optional.of(startedAt) : Optional.empty();
        Trial read = trial(time, climate);
        if (paths.isPresent() && paths.get().complete(index, read, definition, values, row(), findings)) {
            marked = true;
            read = trial(time, climate);
            marked = false;
        }
        if (log != null && !covered && Double.isNaN(value(TrialColumn.RH_PCT))) {
            sessions.missedLog(index, timed, row());
        } else if (covered && !timed) {
            sessions.usedStart(index);
        }
        TrialRules.check(read, definition, sessions.facts(index), logTemp, logRh, row(), findings);
        receiver.accept(index, read, row());
    }

    private double value(TrialColumn column) {
        return values[column.ordinal()];
    }

    private int count(TrialColumn column) {
        double value = values[column.ordinal()];
        return Double.isNaN(value) ? -1 : (int) value;
    }

    private Trial trial(Optional<Instant> time, Climate climate) {
        return new Trial(
                session,
                trial,
                time,
                kind,
                shot,
                ball,
                value(TrialColumn.TEMP_C),
                value(TrialColumn.RH_PCT),
                value(TrialColumn.APPROACH_ANGLE_DEG),
                value(TrialColumn.APPROACH_SPEED_MPS),
                value(TrialColumn.SIDE_SPIN_RPS),
                value(TrialColumn.ROLL_RATIO),
                value(TrialColumn.TIP_OFFSET_MM),
                value(TrialColumn.REBOUND_ANGLE_DEG),
                value(TrialColumn.REBOUND_SPEED_MPS),
                value(TrialColumn.FINAL_REBOUND_ANGLE_DEG),
                value(TrialColumn.LANDING_OFFSET_DIA),
                made,
                count(TrialColumn.RAILS),
                value(TrialColumn.RUN_OUT_M),
                value(TrialColumn.RUN_OUT_LENGTHS),
                value(TrialColumn.OBJECT_ANGLE_DEG),
                value(TrialColumn.DEFLECTION_ANGLE_DEG),
                value(TrialColumn.HOP_HEIGHT_MM),
                count(TrialColumn.BALLS_MADE),
                value(TrialColumn.SPREAD_NEAREST_MM),
                value(TrialColumn.CUE_BALL_TRAVEL_M),
                note,
                climate,
                uncertainStated || marked ? uncertainty() : OutcomeUncertainty.NONE);
    }

    private OutcomeUncertainty uncertainty() {
        return new OutcomeUncertainty(
                        value(TrialColumn.APPROACH_ANGLE_U_DEG),
                        value(TrialColumn.APPROACH_SPEED_U_MPS),
                        value(TrialColumn.REBOUND_ANGLE_U_DEG),
                        value(TrialColumn.REBOUND_SPEED_U_MPS),
                        value(TrialColumn.FINAL_REBOUND_ANGLE_U_DEG),
                        value(TrialColumn.LANDING_OFFSET_U_DIA),
                        value(TrialColumn.RUN_OUT_U_M),
                        value(TrialColumn.RUN_OUT_U_LENGTHS),
                        value(TrialColumn.OBJECT_ANGLE_U_DEG),
                        value(TrialColumn.DEFLECTION_ANGLE_U_DEG),
                        value(TrialColumn.HOP_HEIGHT_U_MM),
                        value(TrialColumn.SPREAD_NEAREST_U_MM),
                        value(TrialColumn.CUE_BALL_TRAVEL_U_M))
                .orNone();
    }
}
