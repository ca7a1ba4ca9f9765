package org.tableweather.schema.folder;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;
import org.tableweather.schema.json.ContributionJson;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.OutcomeUncertainty;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Trial;
import org.tableweather.schema.table.ClimateColumn;
import org.tableweather.schema.table.ContactColumn;
import org.tableweather.schema.table.TrialColumn;

/** Writes a contribution folder under temporary names, which are replaced when it is closed. */
final class FolderWriter implements ContributionWriter {
    private final Path folder;
    private final Contribution contribution;
    private final ColumnFile<TrialColumn> trials;
    private final ColumnFile<ClimateColumn> climate;
    private final ColumnFile<ContactColumn> contacts;
    private boolean abandoned;
    private boolean closed;

    private FolderWriter(Path folder, Contribution contribution) {
        this.folder = folder;
        this.contribution = contribution;
        this.trials = new ColumnFile<>(folder.resolve(TrialRows.FILE), TrialColumn.all());
        this.climate = new ColumnFile<>(folder.resolve(ClimateRows.FILE), ClimateColumn.all());
        this.contacts = new ColumnFile<>(folder.resolve(ContactRows.FILE), ContactColumn.all());
    }

    static FolderWriter open(Path folder, Contribution contribution) throws IOException {
        Files.createDirectories(folder);
        for (String file : List.of(ContributionJson.FILE, TrialRows.FILE, ClimateRows.FILE, ContactRows.FILE)) {
            if (Files.exists(folder.resolve(file))) {
                throw new FileAlreadyExistsException(folder.resolve(file).toString(), null, "the folder is taken");
            }
        }
        return new FolderWriter(folder, contribution);
    }

    /** What is done with a file. */
    @FunctionalInterface
    private interface Step {
        void run() throws IOException;
    }

    private void guarded(Step step) throws IOException {
        boolean done = false;
        try {
            step.run();
            done = true;
        } finally {
            abandoned |= !done;
        }
    }

    @Override
    public void write(Trial t) throws IOException {
        guarded(() -> {
            CellWriter row = trials.row();
            row.text(t.session());
            row.text(t.trial());
            row.text(t.startedAt().map(Object::toString).orElse(""));
            row.text(t.kind().schemaName());
            row.text(t.shot());
            row.text(t.ball());
            row.number(t.tempC());
            row.skip();
            row.number(t.rhPct());
            row.number(t.approachAngleDeg());
            row.number(t.approachSpeedMps());
            row.skip();
            row.number(t.sideSpinRps());
            row.number(t.rollRatio());
            row.number(t.tipOffsetMm());
            row.skip();
            row.number(t.reboundAngleDeg());
            row.number(t.reboundSpeedMps());
            row.skip();
            row.number(t.finalReboundAngleDeg());
            row.number(t.landingOffsetDia());
            row.text(t.made() == Made.NOT_STATED ? "" : t.made().name().toLowerCase(Locale.ROOT));
            row.count(t.rails());
            row.number(t.runOutM());
            row.number(t.runOutLengths());
            row.number(t.objectAngleDeg());
            row.number(t.deflectionAngleDeg());
            row.number(t.hopHeightMm());
            row.skip();
            row.count(t.ballsMade());
            row.number(t.spreadNearestMm());
            row.number(t.cueBallTravelM());
            uncertainty(row, t.uncertainty());
            row.text(t.note());
            row.end();
        });
    }

    private static void uncertainty(CellWriter row, OutcomeUncertainty u) {
        row.number(u.approachAngleUDeg());
        row.number(u.approachSpeedUMps());
        row.number(u.reboundAngleUDeg());
        row.number(u.reboundSpeedUMps());
        row.number(u.finalReboundAngleUDeg());
        row.number(u.landingOffsetUDia());
        row.number(u.runOutUM());
        row.number(u.runOutULengths());
        row.number(u.objectAngleUDeg());
        row.number(u.deflectionAngleUDeg());
        row.number(u.hopHeightUMm());
        row.number(u.spreadNearestUMm());
        row.number(u.cueBallTravelUM());
    }

    @Override
    public void write(ClimateReading reading) throws IOException {
        guarded(() -> {
            CellWriter row = climate.row();
            row.text(reading.instrument());
            row.text(reading.time().toString());
            row.number(reading.tempC());
            row.skip();
            row.number(reading.rhPct());
            row.number(reading.pressureHpa());
            row.number(reading.bedC());
            row.skip();
            row.text(reading.placement());
            row.end();
        });
    }

    @Override
    public void write(Contact contact) throws IOException {
        guarded(() -> {
            CellWriter row = contacts.row();
            row.text(contact.session());
            row.text(contact.trial());
            row.count(contact.seq());
            row.text(contact.point().name().toLowerCase(Locale.ROOT));
            row.text(contact.rail().map(Rail::schemaName).orElse(""));
            row.number(contact.xDia());
            row.number(contact.yDia());
            row.number(contact.xM());
            row.number(contact.yM());
            row.number(contact.xPx());
            row.number(contact.yPx());
            row.text(contact.camera());
            row.number(contact.timeS());
            row.end();
        });
    }

    @Override
    public void abandon() {
        abandoned = true;
    }

    @Override
    public void close() throws IOException {
        if (closed) {
            return;
        }
        closed = true;
        Path json = folder.resolve(ContributionJson.FILE + ColumnFile.PART);
        try {
            if (!abandoned) {
                Files.write(json, ContributionJson.readable().writeValueAsBytes(contribution));
                trials.prepare();
                climate.prepare();
                contacts.prepare();
                trials.publish();
                climate.publish();
                contacts.publish();
                Files.move(json, folder.resolve(ContributionJson.FILE), StandardCopyOption.ATOMIC_MOVE);
            }
        } finally {
            trials.discard();
            climate.discard();
            contacts.discard();
            Files.deleteIfExists(json);
        }
    }
}
