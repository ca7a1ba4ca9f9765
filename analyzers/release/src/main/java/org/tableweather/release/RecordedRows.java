package org.tableweather.release;

import java.io.IOException;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.folder.ReadingSink;
import org.tableweather.schema.folder.Recordings;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Trial;

/** The readings of the instruments of released sessions and the marked points of their trials; they wait on disk. */
final class RecordedRows {
    private static final Comparator<ClimateReading> BY_TIME = Comparator.comparing(ClimateReading::time);
    private static final Comparator<Contact> BY_PLACE =
            Comparator.comparing(Contact::trial, Trial.ID_ORDER).thenComparingInt(Contact::seq);

    private final SortedSpill<Owner, ClimateReading> readings;
    private final SortedSpill<Owner, Contact> contacts;

    RecordedRows(Spill spill) {
        readings = new SortedSpill<>(spill, new ReadingCodec(), BY_TIME);
        contacts = new SortedSpill<>(spill, new ContactCodec(), BY_PLACE);
    }

    /**
     * What rows belong to.
     *
     * @param contribution id of it
     * @param id of the instrument or session in it
     */
    record Owner(String contribution, String id) {
        static Owner instrument(SpilledSession session) {
            return new Owner(session.contribution(), session.instrument());
        }

        static Owner session(SpilledSession session) {
            return new Owner(session.contribution(), session.id());
        }
    }

    /** Reads what belongs to some sessions of one contribution. */
    void read(ReleaseInput.Origin origin, List<SpilledSession> sessions) throws IOException {
        Map<String, Owner> instruments = new HashMap<>();
        Map<String, Owner> ids = new HashMap<>();
        for (SpilledSession session : sessions) {
            ids.put(session.id(), Owner.session(session));
            if (!session.instrument().isEmpty()) {
                instruments.put(session.instrument(), Owner.instrument(session));
            }
        }
        Optional<ContributionSource> opened = origin.open();
        if (opened.isPresent()) {
            try (ContributionSource source = opened.get()) {
                ReadingSink kept = reading -> keep(readings, instruments.get(reading.instrument()), reading);
                Recordings.read(
                        source,
                        instruments.isEmpty() ? ReadingSink.NONE : kept,
                        contact -> keep(contacts, ids.get(contact.session()), contact));
            }
        }
    }

    private static <R> void keep(SortedSpill<Owner, R> rows, Owner owner, R row) throws IOException {
        if (owner != null) {
            rows.put(owner, row);
        }
    }

    /** The readings of an instrument, by time. */
    SortedSpill<Owner, ClimateReading> readings() {
        return readings;
    }

    /** The marked points of a session, by trial as trials are sorted, then along the path. */
    SortedSpill<Owner, Contact> contacts() {
        return contacts;
    }
}
