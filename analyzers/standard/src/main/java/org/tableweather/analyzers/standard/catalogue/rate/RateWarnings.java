package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.PoolWords;

/** What a reader must know before trusting the answer, in words. */
final class RateWarnings {

    private static final int FEW_ROOMS = 10;

    private final RateModel model;
    private final RateCurve curve;
    private final List<String> warnings = new ArrayList<>();

    RateWarnings(RateModel model, RateCurve curve) {
        this.model = model;
        this.curve = curve;
    }

    List<String> list(RateQuestion asked) {
        warnings.addAll(ofPool(model.pool, asked));
        if (asked.temperature() && !model.question.temperature()) {
            warnings.add("Temperature was left out: it does not vary, or goes with humidity, in these attempts; what it"
                    + " does cannot be told from the rest. Remedy: add sessions at other temperatures.");
        }
        if (model.fit.clusters() < FEW_ROOMS) {
            warnings.add(Figures.counted(model.fit.clusters(), "room") + ", fewer than " + FEW_ROOMS
                    + ": intervals by the normal distribution are too narrow, and how much rooms differ is hardly"
                    + " known. Remedy: add rooms.");
        }
        if (model.fit.clusterSd() == 0) {
            warnings.add("Rooms differ no more than luck makes them differ: their variance is estimated as zero, on the"
                    + " boundary of what it can be; that is a result, no error.");
        }
        warnOfSessions();
        warnOfReach();
        return List.copyOf(warnings);
    }

    private void warnOfSessions() {
        if (model.sessionsDiffer()) {
            double inflation = Math.sqrt(model.pearson() / model.pearsonDf());
            warnings.add("Sessions of a room differ more than climate and luck explain (Pearson's X² "
                    + Figures.fixed(model.pearson(), 1) + " on " + model.pearsonDf()
                    + " degrees of freedom): intervals are too narrow, by about a factor of "
                    + Figures.fixed(inflation, 1)
                    + ". Remedy: look for what else changed between sessions, such as shooter, cloth or balls, and add"
                    + " sessions.");
        }
    }

    private void warnOfReach() {
        double lowest = model.pool.humidities().min().orElseThrow();
        double highest = model.pool.humidities().max().orElseThrow();
        if (curve.fromPct < lowest || curve.toPct > highest) {
            warnings.add("The curve reaches beyond the data: sessions were held at " + Figures.fixed(lowest, 1) + " to "
                    + Figures.fixed(highest, 1) + " %RH. Remedy: draw less of it, or add sessions there.");
        }
        double coldest = model.pool.temperatures().min().orElseThrow();
        double warmest = model.pool.temperatures().max().orElseThrow();
        if (model.question.temperature() && (coldest > 21 || warmest < 21)) {
            warnings.add("The curve is drawn at 21 °C, but sessions were held at " + Figures.fixed(coldest, 1) + " to "
                    + Figures.fixed(warmest, 1) + " °C. Remedy: read its slope, not its level.");
        }
    }

    /** What is to be said of the data whether or not there is a fit. */
    static List<String> ofPool(RatePool pool, RateQuestion asked) {
        return new PoolWords("attempt")
                .invented(pool.inventedSessions, pool.sessions.size())
                .chosen(asked.shot(), pool.shot, pool.shots)
                .leftOut(
                        pool.notStated,
                        "not stated whether made or missed. If only the made ones are stated, the rate is too high."
                                + " Remedy: fill in made for every attempt.")
                .leftOut(
                        pool.withoutClimate,
                        "humidity or temperature at the attempt is not known. Remedy: log the climate, or state it on the"
                                + " session.")
                .list();
    }
}
