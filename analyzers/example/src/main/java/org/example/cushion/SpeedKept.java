package org.example.cushion;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.StreamSupport;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** What share of its speed a ball keeps at the first rail: the median session, with an interval from its ranks. */
public final class SpeedKept implements Analyzer<SpeedKept.Kept> {
    private static final List<String> SOURCES = List.of("CommonPractice");
    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "speed-kept",
            "1.0.0",
            "1",
            "Speed kept at the rail",
            "What share of its speed does a ball keep at the first rail?",
            "Median over sessions of each session's median of v′/v; interval from the k-th smallest to the k-th"
                    + " largest session, k the largest with 2 P(Bin(n, ½) < k) ≤ 5 %.",
            List.of("sessions are independent of each other"),
            List.of("fewer than 6 sessions have attempts with both speeds"),
            List.of(),
            List.of("approach_speed_mps", "rebound_speed_mps"),
            SOURCES);

    /** Attempts with both speeds, and the median of speed after over speed before; 0 when there is no attempt. */
    public record Kept(long attempts, double median) {}

    @Override
    public AnalyzerInfo info() {
        return INFO;
    }

    @Override
    public Class<Kept> summaryType() {
        return Kept.class;
    }

    @Override
    public Kept summarise(SessionRecord session, Iterable<Trial> trials) {
        double[] kept = sorted(StreamSupport.stream(trials.spliterator(), false)
                .filter(trial -> trial.approachSpeedMps() > 0)
                .mapToDouble(trial -> trial.reboundSpeedMps() / trial.approachSpeedMps()));
        return new Kept(kept.length, kept.length == 0 ? 0 : median(kept));
    }

    @Override
    public Analysis conclude(SummarySource<Kept> summaries, Parameters parameters) {
        double[] medians = sorted(summaries.sessions().stream()
                .filter(session -> session.summary().attempts() > 0)
                .mapToDouble(session -> session.summary().median()));
        int n = medians.length;
        int k = rank(n);
        Map<String, String> set = parameters.values();
        if (k == 0) {
            String detail = n + " sessions with both speeds < 6: log approach and rebound speed in more";
            return new Declined(Reason.TOO_FEW_RECORDS, detail, set, List.of(), SOURCES);
        }
        Estimate kept = new Estimate(
                "kept", median(medians), null, null, medians[k - 1], medians[n - k], "1", "speed after over before");
        String words = "A ball keeps %.3f of its speed at the first rail (%.3f to %.3f).";
        String sentence = String.format(Locale.ROOT, words, kept.value(), kept.lower(), kept.upper());
        Map<String, Object> fit = Map.of("sessions", n);
        return new Estimated(
                sentence, set, fit, List.of(kept), List.of(), List.of(), List.of(), List.of(), List.of(), SOURCES);
    }

    static int rank(int sessions) {
        int k = 0;
        double chance = Math.pow(0.5, sessions);
        for (double below = chance; 2 * below <= 0.05; below += chance) {
            k++;
            chance *= (double) (sessions - k + 1) / k;
        }
        return k;
    }

    private static double[] sorted(DoubleStream numbers) {
        return numbers.filter(Double::isFinite).sorted().toArray();
    }

    private static double median(double[] sorted) {
        return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }
}
