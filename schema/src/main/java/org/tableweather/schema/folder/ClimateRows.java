package org.tableweather.schema.folder;

import java.io.IOException;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.tableweather.schema.check.ClimateChecks;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;
import org.tableweather.schema.check.UnitChecks;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.climate.StandardAtmosphere;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.table.ClimateColumn;

/** Reads {@code climate.csv} into one log per instrument. Readings placed at the bed or outdoors are checked only. */
final class ClimateRows extends CheckedRows {
    static final String FILE = "climate.csv";
    private static final int MAX_READINGS = 4_000_000;
    private static final Set<String> NOT_ROOM_AIR = Set.of("bed", "outdoor", "outdoors", "outside");

    private final ClimateLog.ByInstrument logs = new ClimateLog.ByInstrument();
    private final Optional<Set<String>> instruments;
    private final Kept kept;
    private final ReadingSink sink;
    private List<ClimateColumn> columns = List.of();
    private int readings;

    private String instrument = "";
    private String placement = "";
    private boolean timed;
    private long second;
    private int nano;
    private double tempC;
    private double tempF;
    private double rhPct;
    private double bedC;
    private double bedF;
    private double pressureHpa;
    private final Map<String, Double> altitudes = new HashMap<>();

    /** Which readings are kept. */
    @FunctionalInterface
    interface Kept {
        /** Whether to keep the reading of an instrument at a second since 1970. */
        boolean test(String instrument, long second);
    }

    ClimateRows(Optional<Contribution> contribution, Findings findings) {
        this(contribution, findings, (instrument, second) -> true);
    }

    ClimateRows(Optional<Contribution> contribution, Findings findings, Kept kept) {
        this(contribution, findings, kept, ReadingSink.NONE);
    }

    ClimateRows(Optional<Contribution> contribution, Findings findings, Kept kept, ReadingSink sink) {
        super(FILE, findings);
        this.kept = kept;
        this.sink = sink;
        this.instruments = contribution.map(
                content -> content.instruments().stream().map(Instrument::id).collect(Collectors.toSet()));
        contribution.ifPresent(this::altitudes);
    }

    /** The altitudes at which instruments read: each of the first room that has one and a session with it. */
    private void altitudes(Contribution content) {
        Map<String, Double> rooms = new HashMap<>();
        content.rooms()
                .forEach(room -> room.altitudeM().ifPresent(altitudeM -> rooms.putIfAbsent(room.id(), altitudeM)));
        Map<String, Double> tables = new HashMap<>();
        content.tables().forEach(table -> tables.putIfAbsent(table.id(), rooms.get(table.room())));
        for (Session session : content.sessions()) {
            Double altitudeM = tables.get(session.table());
            if (altitudeM != null && session.instrument().isPresent()) {
                altitudes.putIfAbsent(session.instrument().get(), altitudeM);
            }
        }
    }

    /** A bed colder than its room may sweat. */
    private void bed(double airC, double bed) {
        boolean known = bed < airC
                && rhPct > 0
                && rhPct <= 100
                && MoistAir.TEMPERATURE.contains(airC)
                && MoistAir.SURFACE.contains(bed);
        if (known && MoistAir.of(airC, rhPct).condensesOn(bed)) {
            findings.add(
                    ClimateChecks.BED_BELOW_DEW_POINT,
                    Place.cell(FILE, row(), ClimateColumn.BED_C.header()),
                    Double.toString(bed),
                    () -> "at " + airC + " °C and " + rhPct + " % the dew point is "
                            + Math.round(MoistAir.of(airC, rhPct).dewPointC() * 10) / 10.0 + " °C");
        }
    }

    private void pressure() {
        Double altitudeM = altitudes.get(instrument);
        if (altitudeM == null || !StandardAtmosphere.ALTITUDE.contains(altitudeM)) {
            return;
        }
        double standardHpa = StandardAtmosphere.pressurePa(altitudeM) / 100;
        if (Math.abs(pressureHpa / standardHpa - 1) > 0.06) {
            findings.add(
                    ClimateChecks.PRESSURE_ALTITUDE,
                    Place.cell(FILE, row(), ClimateColumn.PRESSURE_HPA.header()),
                    Double.toString(pressureHpa),
                    () -> "the standard atmosphere has " + Math.round(standardHpa) + " hPa at " + altitudeM + " m");
        }
    }

    ClimateLog.ByInstrument close() {
        logs.close(FILE, findings);
        return logs;
    }

    int readings() {
        return readings;
    }

    @Override
    protected void header(List<String> names, long row) {
        Header<ClimateColumn> header = new Header<>(FILE, ClimateColumn.all(), findings);
        columns = header.match(names, row);
        header.needOneOf(List.of(ClimateColumn.TEMP_C, ClimateColumn.TEMP_F), row);
    }

    @Override
    protected void begin() {
        clean();
        instrument = "";
        placement = "";
        timed = false;
        tempC = Double.NaN;
        tempF = Double.NaN;
        rhPct = Double.NaN;
        bedC = Double.NaN;
        bedF = Double.NaN;
        pressureHpa = Double.NaN;
    }

    @Override
    protected void cell(int column, char[] buffer, int from, int to) {
        ClimateColumn known = columns.get(column);
        if (known == null) {
            ignore(column, buffer, from, to);
            return;
        }
        switch (known) {
            case INSTRUMENT -> instrument = text(known, buffer, from, to);
            case PLACEMENT -> placement = text(known, buffer, from, to);
            case TIME -> {
                timed = time(known, buffer, from, to);
                second = times.epochSecond();
                nano = times.nano();
            }
            case TEMP_C -> tempC = number(known, buffer, from, to);
            case TEMP_F -> tempF = number(known, buffer, from, to);
            case RH_PCT -> rhPct = number(known, buffer, from, to);
            case BED_C -> bedC = number(known, buffer, from, to);
            case BED_F -> bedF = number(known, buffer, from, to);
            case PRESSURE_HPA -> pressureHpa = number(known, buffer, from, to);
        }
    }

    @Override
    protected void end(int cells, int extra) throws IOException {
        readings++;
        checkWidth(cells, extra);
        if (!isRefused() && columns.contains(ClimateColumn.INSTRUMENT)) {
            require(ClimateColumn.INSTRUMENT, !instrument.isEmpty());
            knowInstrument();
        }
        if (!isRefused() && columns.contains(ClimateColumn.TIME)) {
            require(ClimateColumn.TIME, timed);
        }
        double temperature = celsius(ClimateColumn.TEMP_F, tempC, tempF);
        double bed = celsius(ClimateColumn.BED_F, bedC, bedF);
        bed(temperature, bed);
        if (pressureHpa == pressureHpa) {
            pressure();
        }
        if (rhPct == 0) {
            findings.add(
                    ClimateChecks.DRY_ZERO,
                    Place.cell(FILE, row(), ClimateColumn.RH_PCT.header()),
                    "0",
                    () -> "a relative humidity of exactly 0 %");
        }
        if (!isRefused() && readings <= MAX_READINGS) {
            keep(temperature, bed);
        } else if (readings == MAX_READINGS + 1) {
            findings.add(
                    StructureChecks.READINGS_SIZE, Place.row(FILE, row()), null, () -> "the file has more readings");
        }
    }

    private void keep(double temperature, double bed) throws IOException {
        if (isRoomAir() && !Double.isNaN(temperature + rhPct) && kept.test(instrument, second)) {
            logs.of(instrument).add(second, temperature, rhPct, row());
        }
        if (sink != ReadingSink.NONE && timed && !instrument.isEmpty()) {
            Instant time = Instant.ofEpochSecond(second, nano);
            sink.accept(new ClimateReading(instrument, time, temperature, rhPct, pressureHpa, bed, placement));
        }
    }

    private boolean isRoomAir() {
        return timed && !NOT_ROOM_AIR.contains(placement.toLowerCase(Locale.ROOT));
    }

    private void knowInstrument() {
        if (!isRefused() && instruments.isPresent() && !instruments.get().contains(instrument)) {
            String id = instrument;
            refuse(
                    StructureChecks.UNKNOWN_REFERENCE,
                    ClimateColumn.INSTRUMENT,
                    id,
                    "the id of an entry of instruments",
                    () -> "no entry of instruments has this id");
        }
    }

    private double celsius(ClimateColumn column, double celsius, double fahrenheit) {
        double converted = (fahrenheit - 32) / 1.8;
        if (!Double.isNaN(celsius) && !Double.isNaN(fahrenheit) && Math.abs(converted - celsius) > 0.1) {
            refuse(
                    UnitChecks.DISAGREE,
                    column,
                    Double.toString(fahrenheit),
                    UnitChecks.DISAGREE.bound(),
                    () -> fahrenheit + " °F are not " + celsius + " °C");
        }
        return Double.isNaN(celsius) ? converted : celsius;
    }
}
