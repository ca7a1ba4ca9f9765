package org.tableweather.schema.folder;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.GeometryChecks;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.table.ContactColumn;

/** Reads {@code contacts.csv}: structure, ranges and references; its geometry is judged elsewhere. */
final class ContactRows extends CheckedRows {
    static final String FILE = "contacts.csv";
    private static final int COLUMNS = ContactColumn.values().length;

    private final SessionIndex sessions;
    private final ContactPaths paths;
    private final ContactSink sink;
    private final double[] values = new double[COLUMNS];
    private List<ContactColumn> columns = List.of();
    private String session = "";
    private String trial = "";
    private String camera = "";
    private Contact.Point point;
    private Optional<Rail> rail = Optional.empty();

    private String lastSession = "";
    private String lastTrial = "";
    private double lastSeq;
    private double lastTime;
    private int points;

    ContactRows(SessionIndex sessions, ContactPaths paths, Findings findings) {
        this(sessions, paths, ContactSink.NONE, findings);
    }

    ContactRows(SessionIndex sessions, ContactPaths paths, ContactSink sink, Findings findings) {
        super(FILE, findings);
        this.sessions = sessions;
        this.paths = paths;
        this.sink = sink;
    }

    @Override
    protected void header(List<String> names, long row) {
        Header<ContactColumn> header = new Header<>(FILE, ContactColumn.all(), findings);
        columns = header.match(names, row);
        header.needOneOf(List.of(ContactColumn.X_DIA, ContactColumn.X_M, ContactColumn.X_PX), row);
        header.needOneOf(List.of(ContactColumn.Y_DIA, ContactColumn.Y_M, ContactColumn.Y_PX), row);
    }

    @Override
    protected void begin() {
        clean();
        java.util.Arrays.fill(values, Double.NaN);
        session = "";
        trial = "";
        camera = "";
        point = null;
        rail = Optional.empty();
    }

    @Override
    protected void cell(int column, char[] buffer, int from, int to) {
        ContactColumn known = columns.get(column);
        if (known == null) {
            ignore(column, buffer, from, to);
            return;
        }
        switch (known) {
            case SESSION -> session = text(known, buffer, from, to);
            case TRIAL -> trial = text(known, buffer, from, to);
            case CAMERA -> camera = text(known, buffer, from, to);
            case POINT -> point = choice(known, Contact.Point.class, text(known, buffer, from, to));
            case RAIL -> rail = Optional.ofNullable(choice(known, Rail.class, text(known, buffer, from, to)));
            default -> values[known.ordinal()] = position(known, buffer, from, to);
        }
    }

    /** A number; a place beyond the table is a matter of geometry. */
    private double position(ContactColumn column, char[] buffer, int from, int to) {
        double value = decimals.parse(buffer, from, to);
        boolean place = column == ContactColumn.X_DIA
                || column == ContactColumn.Y_DIA
                || column == ContactColumn.X_M
                || column == ContactColumn.Y_M;
        if (place && (value < column.min() || value > column.max())) {
            outside(column, value, column.max());
            return value;
        }
        return number(column, buffer, from, to);
    }

    private void outside(ContactColumn column, double value, double most) {
        refuse(
                GeometryChecks.CONTACT_OUTSIDE,
                column,
                Double.toString(value),
                "0 to " + most + " " + column.unit(),
                () -> value + " is not on the table");
    }

    private <E extends Enum<E>> E choice(ContactColumn column, Class<E> type, String word) {
        for (E constant : type.getEnumConstants()) {
            if (constant.name().toLowerCase(Locale.ROOT).equals(word.toLowerCase(Locale.ROOT))) {
                return constant;
            }
        }
        String names = String.join(
                ", ",
                java.util.Arrays.stream(type.getEnumConstants())
                        .map(constant -> constant.name().toLowerCase(Locale.ROOT))
                        .toList());
        refuse(StructureChecks.CHOICE, column, word, "one of " + names, () -> "'" + word + "' is none of " + names);
        return null;
    }

    @Override
    protected void end(int cells, int extra) throws IOException {
        checkWidth(cells, extra);
        if (isRefused()) {
            damage();
            return;
        }
        requireIfThere(ContactColumn.SESSION, !session.isEmpty());
        requireIfThere(ContactColumn.TRIAL, !trial.isEmpty());
        requireIfThere(ContactColumn.POINT, point != null);
        requireIfThere(ContactColumn.SEQ, !Double.isNaN(value(ContactColumn.SEQ)));
        if (!isRefused()) {
            refer();
            order();
            railNamed();
        }
        if (isRefused()) {
            damage();
        } else if (point != null) {
            keep();
        }
    }

    private void damage() {
        int index = sessions.find(session);
        if (index >= 0 && !trial.isEmpty()) {
            paths.damage(index, trial, row());
        }
    }

    private void keep() throws IOException {
        int index = sessions.find(session);
        if (index < 0 || trial.isEmpty()) {
            return;
        }
        if (++points > ContactPaths.MAX_POINTS) {
            if (points == ContactPaths.MAX_POINTS + 1) {
                findings.add(
                        StructureChecks.CONTACTS_SIZE,
                        Place.row(FILE, row()),
                        null,
                        () -> "the file has more marked points");
            }
            paths.damage(index, trial, row());
            return;
        }
        Contact contact = new Contact(
                session,
                trial,
                (int) value(ContactColumn.SEQ),
                point,
                rail,
                value(ContactColumn.X_DIA),
                value(ContactColumn.Y_DIA),
                value(ContactColumn.X_M),
                value(ContactColumn.Y_M),
                value(ContactColumn.X_PX),
                value(ContactColumn.Y_PX),
                camera,
                value(ContactColumn.T_S));
        paths.add(index, contact, row());
        sink.accept(contact);
    }

    private void requireIfThere(ContactColumn column, boolean filled) {
        if (columns.contains(column)) {
            require(column, filled);
        }
    }

    private double value(ContactColumn column) {
        return values[column.ordinal()];
    }

    private void refer() {
        int index = sessions.find(session);
        if (index == SessionIndex.UNKNOWN) {
            String id = session + " " + trial;
            refuse(
                    GeometryChecks.CONTACT_TRIAL,
                    ContactColumn.TRIAL,
                    id,
                    GeometryChecks.CONTACT_TRIAL.bound(),
                    () -> "contribution.json has no session " + session);
        } else if (index >= 0) {
            onTable(sessions.table(index));
        }
    }

    private void onTable(Optional<PoolTable> table) {
        double length = table.map(PoolTable::playingLengthMm)
                .orElse(java.util.OptionalDouble.empty())
                .orElse(4000);
        double width = table.map(PoolTable::playingWidthMm)
                .orElse(java.util.OptionalDouble.empty())
                .orElse(2000);
        if (value(ContactColumn.X_M) * 1000 > length) {
            outside(ContactColumn.X_M, value(ContactColumn.X_M), length / 1000);
        }
        if (value(ContactColumn.Y_M) * 1000 > width) {
            outside(ContactColumn.Y_M, value(ContactColumn.Y_M), width / 1000);
        }
    }

    private void order() {
        double seq = value(ContactColumn.SEQ);
        double time = value(ContactColumn.T_S);
        boolean same = session.equals(lastSession) && trial.equals(lastTrial);
        if (same && (seq <= lastSeq || time < lastTime)) {
            refuse(
                    GeometryChecks.CONTACT_ORDER,
                    seq <= lastSeq ? ContactColumn.SEQ : ContactColumn.T_S,
                    Double.toString(seq <= lastSeq ? seq : time),
                    GeometryChecks.CONTACT_ORDER.bound(),
                    () -> "not after the row before");
        }
        lastSession = session;
        lastTrial = trial;
        lastSeq = seq;
        lastTime = Double.isNaN(time) && same ? lastTime : time;
    }

    private void railNamed() {
        if (point == Contact.Point.RAIL && rail.isEmpty()) {
            refuse(
                    GeometryChecks.CONTACT_RAIL,
                    ContactColumn.RAIL,
                    "",
                    GeometryChecks.CONTACT_RAIL.bound(),
                    () -> "a rail contact without its rail");
        }
    }
}
