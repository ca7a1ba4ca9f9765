package org.tableweather.analyzers.standard.catalogue.agreement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.rooms.RoomPool;
import org.tableweather.analyzers.standard.statistics.interlab.CochranTest;
import org.tableweather.analyzers.standard.statistics.interlab.Consistency;
import org.tableweather.analyzers.standard.statistics.interlab.Consistency.Statistic;
import org.tableweather.analyzers.standard.statistics.interlab.GrubbsTest;
import org.tableweather.analyzers.standard.statistics.interlab.GrubbsTest.Suspect;
import org.tableweather.analyzers.standard.statistics.interlab.Laboratory;
import org.tableweather.analyzers.standard.statistics.interlab.Precision;
import org.tableweather.analyzers.standard.statistics.interlab.Verdict;

/** What a reader must know of a study of agreement, each with what would help. */
final class AgreementWarnings {

    /** Fewer rooms than a study needs to be of use. */
    private static final int FEW_ROOMS = 6;

    private final RoomPool pool;
    private final HumidityBand band;
    private final RoomResults results;
    private final Precision precision;
    private final Optional<Consistency> consistency;
    private final Optional<CochranTest> cochran;
    private final Optional<GrubbsTest> grubbs;
    private final List<String> warnings = new ArrayList<>();

    AgreementWarnings(
            RoomPool pool,
            HumidityBand band,
            RoomResults results,
            Precision precision,
            Optional<Consistency> consistency,
            Optional<CochranTest> cochran,
            Optional<GrubbsTest> grubbs) {
        this.pool = pool;
        this.band = band;
        this.results = results;
        this.precision = precision;
        this.consistency = consistency;
        this.cochran = cochran;
        this.grubbs = grubbs;
    }

    List<String> list() {
        warnings.addAll(pool.warnings());
        warnOfBand();
        warnOfCounts();
        cochran.filter(test -> test.verdict() != Verdict.CORRECT)
                .ifPresent(test -> warnings.add("Trials scatter too widely in " + test.label() + " ("
                        + words(test.verdict())
                        + ", Cochran's test): look for a cause there; keep its data when there is none."));
        grubbs.ifPresent(this::warnOfMeans);
        consistency.ifPresent(this::warnOfBounds);
        return List.copyOf(warnings);
    }

    private void warnOfBand() {
        if (!results.outside.isEmpty()) {
            warnings.add("No session at " + Figures.plain(band.fromPct()) + " to " + Figures.plain(band.toPct())
                    + " %RH, so not compared: " + Figures.listed(results.outside)
                    + "; hold a session there, or set another band.");
        }
        double apart = results.dampestPct - results.driestPct;
        if (apart > 2) {
            warnings.add("The sessions compared lie " + Figures.fixed(apart, 1)
                    + " %RH apart: what humidity changes over that is counted between rooms; set a narrower band where"
                    + " rooms allow it.");
        }
    }

    private void warnOfCounts() {
        int rooms = results.laboratories.size();
        if (rooms < FEW_ROOMS) {
            warnings.add(rooms + " rooms, fewer than " + FEW_ROOMS
                    + ": how much rooms differ is hardly known; more rooms help, more trials do not.");
        }
        List<String> single = results.laboratories.stream()
                .filter(room -> room.n() < 2)
                .map(Laboratory::label)
                .toList();
        if (!single.isEmpty()) {
            warnings.add("One trial only, so no scatter of their own: " + Figures.listed(single)
                    + "; repeat the shot there.");
        }
        long most = results.laboratories.stream().mapToLong(Laboratory::n).max().orElse(0);
        long least =
                results.laboratories.stream().mapToLong(Laboratory::n).min().orElse(0);
        if (most > 2 * least) {
            warnings.add("Rooms have from " + least + " to " + most
                    + " trials: the bounds of k and Cochran's test, made for the commonest number, are rough;"
                    + " shoot as many in each room.");
        }
        if (precision.betweenSd() == 0) {
            warnings.add("The variance between rooms is estimated as zero, on the boundary of what it can be; that is a"
                    + " result, no error.");
        }
    }

    private void warnOfMeans(GrubbsTest test) {
        boolean single = warn(test.high(), "highest") | warn(test.low(), "lowest");
        if (!single) {
            test.twoHigh().ifPresent(pair -> warn(pair, "two highest"));
            test.twoLow().ifPresent(pair -> warn(pair, "two lowest"));
        }
    }

    private boolean warn(Suspect suspect, String which) {
        if (suspect.verdict() == Verdict.CORRECT) {
            return false;
        }
        warnings.add("The " + which + " mean lies apart: " + String.join(", ", suspect.labels()) + " ("
                + words(suspect.verdict())
                + ", Grubbs' test): look for a cause there; keep its data when there is none.");
        return true;
    }

    private void warnOfBounds(Consistency found) {
        double criticalH = found.criticalH(AgreementFacts.ALPHA);
        double criticalK = found.criticalK(AgreementFacts.ALPHA).orElse(Double.POSITIVE_INFINITY);
        List<String> beyond = found.laboratories().stream()
                .filter(one -> Math.abs(one.h()) > criticalH || one.k().orElse(0) > criticalK)
                .map(Statistic::label)
                .toList();
        if (!beyond.isEmpty()) {
            // h has two ends, both within the 0.5 %
            double byChance = 2 * AgreementFacts.ALPHA * found.laboratories().size();
            warnings.add("Beyond the 0.5 % bounds of Mandel's h or k: " + Figures.listed(beyond) + " (about "
                    + Figures.fixed(byChance, 1) + " expected by chance among as many rooms)"
                    + "; see the plots, and look for a slip in set-up or logging.");
        }
    }

    private static String words(Verdict verdict) {
        return verdict == Verdict.OUTLIER ? "beyond the 1 % bound" : "beyond the 5 % bound";
    }
}
