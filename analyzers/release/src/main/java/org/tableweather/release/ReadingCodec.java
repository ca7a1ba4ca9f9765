package org.tableweather.release;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.time.Instant;
import org.tableweather.schema.record.ClimateReading;

/** Readings in a temporary file; the instrument is known from where they lie. */
final class ReadingCodec implements SortedSpill.Codec<RecordedRows.Owner, ClimateReading> {
    @Override
    public void write(ClimateReading row, DataOutput to) throws IOException {
        to.writeLong(row.time().getEpochSecond());
        to.writeInt(row.time().getNano());
        to.writeDouble(row.tempC());
        to.writeDouble(row.rhPct());
        to.writeDouble(row.pressureHpa());
        to.writeDouble(row.bedC());
        TrialCodec.text(row.placement(), to);
    }

    @Override
    public ClimateReading read(RecordedRows.Owner instrument, DataInput from) throws IOException {
        return new ClimateReading(
                instrument.id(),
                Instant.ofEpochSecond(from.readLong(), from.readInt()),
                from.readDouble(),
                from.readDouble(),
                from.readDouble(),
                from.readDouble(),
                TrialCodec.text(from));
    }
}
