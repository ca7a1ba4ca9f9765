package org.tableweather.release;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.Optional;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Rail;

/** Marked points in a temporary file; the session is known from where they lie. */
final class ContactCodec implements SortedSpill.Codec<RecordedRows.Owner, Contact> {
    private static final Contact.Point[] POINTS = Contact.Point.values();
    private static final Rail[] RAILS = Rail.values();
    private static final int NO_RAIL = -1;

    @Override
    public void write(Contact row, DataOutput to) throws IOException {
        TrialCodec.text(row.trial(), to);
        to.writeInt(row.seq());
        to.writeByte(row.point().ordinal());
        to.writeByte(row.rail().map(Rail::ordinal).orElse(NO_RAIL));
        to.writeDouble(row.xDia());
        to.writeDouble(row.yDia());
        to.writeDouble(row.xM());
        to.writeDouble(row.yM());
        to.writeDouble(row.xPx());
        to.writeDouble(row.yPx());
        TrialCodec.text(row.camera(), to);
        to.writeDouble(row.timeS());
    }

    @Override
    public Contact read(RecordedRows.Owner session, DataInput from) throws IOException {
        return new Contact(
                session.id(),
                TrialCodec.text(from),
                from.readInt(),
                POINTS[from.readByte()],
                rail(from.readByte()),
                from.readDouble(),
                from.readDouble(),
                from.readDouble(),
                from.readDouble(),
                from.readDouble(),
                from.readDouble(),
                TrialCodec.text(from),
                from.readDouble());
    }

    private static Optional<Rail> rail(int ordinal) {
        return ordinal == NO_RAIL ? Optional.empty() : Optional.of(RAILS[ordinal]);
    }
}
