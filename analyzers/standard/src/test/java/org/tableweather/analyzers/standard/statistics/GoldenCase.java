package org.tableweather.analyzers.standard.statistics;

import java.util.List;
import org.tableweather.analyzers.standard.statistics.NestedModel.Covariance;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;
import org.tableweather.analyzers.standard.statistics.NestedModel.Sessions;

/** Published data sets as rooms and sessions, and the models fitted to them in the golden files. */
enum GoldenCase {
    SLEEP_INTERCEPT("sleepstudy_ri", "sleep_ri", "sleepstudy_lmm.json", "ri", "Subject", ""),
    SLEEP_SLOPE("sleepstudy_rirs", "sleep_rirs", "sleepstudy_lmm.json", "rirs", "Subject", ""),
    SLEEP_UNCORRELATED("sleepstudy_rirs_uncorr", "sleep_uncorr", "sleepstudy_lmm.json", "rirs_uncorr", "Subject", ""),
    DYESTUFF("dyestuff", "", "dyestuff_lmm.json", "oneway", "Batch", ""),
    MACHINES("machines_nested", "machines", "machines_lmm.json", "nested", "Worker", "Machine:Worker"),
    OATS("oats_nitro_linear", "oats_lin", "oats_lmm.json", "nitro_linear", "Block", "Variety:Block"),
    OATS_FACTORS("", "oats_fac", "oats_lmm.json", "nitro_factor", "Block", "Variety:Block"),
    ORTHODONT("orthodont_sex_x_age11_rirs", "", "orthodont_lmm.json", "rirs_sex", "Subject", ""),
    GRAVITY("gravity_oneway", "", "", "", "", "");

    /** Key in lmm_30_digits.json, without the method; empty when absent. */
    final String digits;
    /** Key in small_lmm.json. */
    final String small;
    /** R's output. */
    final String file;
    /** Key in it. */
    final String key;
    /** What R calls the room. */
    final String roomGroup;
    /** What R calls the session. */
    final String sessionGroup;

    GoldenCase(String digits, String small, String file, String key, String roomGroup, String sessionGroup) {
        this.digits = digits;
        this.small = small;
        this.file = file;
        this.key = key;
        this.roomGroup = roomGroup;
        this.sessionGroup = sessionGroup;
    }

    NestedFit fit(Method method) {
        return (NestedFit) model().with(method).fit(rooms());
    }

    private NestedModel model() {
        NestedModel model = NestedModel.withDefaults();
        return switch (this) {
            case SLEEP_INTERCEPT, DYESTUFF, GRAVITY -> model.with(Sessions.ALIKE);
            case SLEEP_SLOPE -> model.with(Sessions.ALIKE).withRandom(0, 1);
            case SLEEP_UNCORRELATED ->
                model.with(Sessions.ALIKE).withRandom(0, 1).with(Covariance.DIAGONAL);
            case ORTHODONT -> model.with(Sessions.ALIKE).withRandom(0, 2);
            case MACHINES, OATS, OATS_FACTORS -> model;
        };
    }

    List<RoomSessions> rooms() {
        return switch (this) {
            case SLEEP_INTERCEPT, SLEEP_SLOPE, SLEEP_UNCORRELATED ->
                Golden.rooms("data/sleepstudy.csv", row -> row.get("Subject"), row -> "", row ->
                        new double[] {Golden.number(row, "Days"), Golden.number(row, "Reaction")});
            case DYESTUFF ->
                Golden.rooms("data/dyestuff.csv", row -> row.get("Batch"), row -> "", row ->
                        new double[] {Golden.number(row, "Yield")});
            case GRAVITY ->
                Golden.rooms("data/gravity.csv", row -> row.get("series"), row -> "", row ->
                        new double[] {Golden.number(row, "g")});
            case MACHINES -> machines();
            case OATS -> oats();
            case OATS_FACTORS -> oatsFactors();
            case ORTHODONT -> orthodont();
        };
    }

    private static List<RoomSessions> machines() {
        return Golden.rooms("data/machines.csv", row -> row.get("Worker"), row -> row.get("Machine"), row ->
                new double[] {is(row.get("Machine"), "B"), is(row.get("Machine"), "C"), Golden.number(row, "score")});
    }

    private static List<RoomSessions> oats() {
        return Golden.rooms("data/oats.csv", row -> row.get("Block"), row -> row.get("Variety"), row ->
                new double[] {Golden.number(row, "nitro"), Golden.number(row, "yield")});
    }

    private static List<RoomSessions> oatsFactors() {
        return Golden.rooms("data/oats.csv", row -> row.get("Block"), row -> row.get("Variety"), row -> {
            double[] nitro = {is(row.get("nitro"), "0.2"), is(row.get("nitro"), "0.4"), is(row.get("nitro"), "0.6")};
            double marvellous = is(row.get("Variety"), "Marvellous");
            double victory = is(row.get("Variety"), "Victory");
            return new double[] {
                nitro[0],
                nitro[1],
                nitro[2],
                marvellous,
                victory,
                nitro[0] * marvellous,
                nitro[1] * marvellous,
                nitro[2] * marvellous,
                nitro[0] * victory,
                nitro[1] * victory,
                nitro[2] * victory,
                Golden.number(row, "yield")
            };
        });
    }

    private static List<RoomSessions> orthodont() {
        return Golden.rooms("data/orthodont.csv", row -> row.get("Subject"), row -> "", row -> {
            double female = is(row.get("Sex"), "Female");
            double age = Golden.number(row, "age") - 11;
            return new double[] {female, age, female * age, Golden.number(row, "distance")};
        });
    }

    private static double is(String actual, String wanted) {
        return actual.equals(wanted) ? 1 : 0;
    }
}
