package org.tableweather.server.contribution;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Calibration;
import org.tableweather.schema.record.Cloth;
import org.tableweather.schema.record.Cue;
import org.tableweather.schema.record.Cushion;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.server.web.Words;

/** What a session was shot with, in words; what was not stated is left out. */
final class EquipmentWords {
    private final List<String> parts = new ArrayList<>();

    private EquipmentWords() {}

    /**
     * A thing and what is known of it.
     *
     * @param name of the thing
     * @param value in words
     */
    record Fact(String name, String value) {}

    /** Table, cloth, cushions, balls, cue and instrument. */
    static List<Fact> of(SessionRecord entry) {
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Table", table(entry.table())));
        facts.add(new Fact(
                "Cloth", entry.table().cloth().map(EquipmentWords::cloth).orElse(Words.NOTHING)));
        facts.add(new Fact(
                "Cushions", entry.table().cushion().map(EquipmentWords::cushion).orElse(Words.NOTHING)));
        facts.add(new Fact("Balls", entry.ballSet().map(EquipmentWords::balls).orElse(Words.NOTHING)));
        facts.add(new Fact("Cue", entry.cue().map(EquipmentWords::cue).orElse(Words.NOTHING)));
        facts.add(new Fact(
                "Instrument", entry.instrument().map(EquipmentWords::instrument).orElse(Words.NOTHING)));
        return facts;
    }

    private static String table(PoolTable table) {
        return new EquipmentWords()
                .number("", table.playingLengthMm(), 0, " mm long nose to nose")
                .number("", table.playingWidthMm(), 0, " mm wide")
                .text(table.heated().map(heated -> heated ? "heated bed" : "bed not heated"))
                .joined();
    }

    private static String cloth(Cloth cloth) {
        return new EquipmentWords()
                .number("", cloth.woolPct(), 0, " % wool")
                .number("", cloth.nylonPct(), 0, " % nylon")
                .number("", cloth.polyesterPct(), 0, " % polyester")
                .text(cloth.weave())
                .number("", cloth.weightGsm(), 0, " g/m²")
                .date("fitted on ", cloth.fittedOn())
                .joined();
    }

    private static String cushion(Cushion cushion) {
        return new EquipmentWords()
                .text(cushion.rubber().map(rubber -> rubber + " rubber"))
                .date("fitted on ", cushion.fittedOn())
                .number("nose ", cushion.noseHeightMm(), 1, " mm over the bed")
                .joined();
    }

    private static String balls(BallSet balls) {
        return new EquipmentWords()
                .text(balls.material())
                .number("", balls.diameterMm(), 2, " mm across")
                .number("", balls.massG(), 1, " g")
                .date("made on ", balls.madeOn())
                .date("cleaned on ", balls.cleanedOn())
                .joined();
    }

    private static String cue(Cue cue) {
        return new EquipmentWords()
                .number("", cue.massG(), 0, " g")
                .number("tip ", cue.tipDiameterMm(), 1, " mm")
                .text(cue.tip())
                .text(cue.shaft())
                .joined();
    }

    private static String instrument(Instrument instrument) {
        return new EquipmentWords()
                .text(instrument.model())
                .number("± ", instrument.accuracyRhPct(), 1, " % relative humidity")
                .number("± ", instrument.accuracyC(), 1, " °C")
                .text(calibrated(instrument.calibrations()))
                .joined();
    }

    private static Optional<String> calibrated(List<Calibration> calibrations) {
        return calibrations.isEmpty()
                ? Optional.of("never compared with anything better known, as far as stated")
                : Optional.of(Words.counted(calibrations.size(), "comparison") + " with something better known");
    }

    private EquipmentWords number(String before, OptionalDouble value, int decimals, String unit) {
        value.ifPresent(number -> parts.add(before + Words.number(number, decimals) + unit));
        return this;
    }

    private EquipmentWords text(Optional<String> words) {
        words.ifPresent(parts::add);
        return this;
    }

    private EquipmentWords date(String before, Optional<LocalDate> date) {
        date.ifPresent(day -> parts.add(before + day));
        return this;
    }

    private String joined() {
        return parts.isEmpty() ? Words.NOTHING : String.join(", ", parts);
    }
}
