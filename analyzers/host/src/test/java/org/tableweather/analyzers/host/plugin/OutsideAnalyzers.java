package org.tableweather.analyzers.host.plugin;

import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.schema.jar.CompiledJar;
import org.tableweather.schema.record.Trial;

/** Jars of one small analyzer each, compiled while the test runs: sound, or hostile in one place. */
final class OutsideAnalyzers {
    static final String COUNT = "long n = 0; for (Trial trial : trials) { n++; } return new Count(n, 1.0 / 3);";
    static final String TELL = "long n = 0; for (var each : summaries.sessions()) { n += each.summary().attempts(); }"
            + " return new Analysis.Declined(Analysis.Reason.NOT_APPLICABLE, n + \" attempts, \" + parameters.values(),"
            + " parameters.values(), List.of(), List.of());";

    private OutsideAnalyzers() {}

    /** A jar whose analyzer {@code outside.Counting} does this. */
    static CompiledJar jar(String begin, String summarise, String conclude) {
        return CompiledJar.against(Analyzer.class, Trial.class)
                .service(Analyzer.class, "outside.Counting")
                .source("outside.Count", "package outside; public record Count(long attempts, double third) {}")
                .source("outside.Counting", SOURCE.formatted(begin, summarise, conclude));
    }

    static CompiledJar sound() {
        return jar("", COUNT, TELL);
    }

    static CompiledJar summarising(String body) {
        return jar("", body, TELL);
    }

    static CompiledJar concluding(String body) {
        return jar("", COUNT, body);
    }

    /** A conclusion with one estimate of this value. */
    static String estimate(String value) {
        return "return new Analysis.Estimated(\"so\", parameters.values(), java.util.Map.of(), List.of("
                + "new Analysis.Estimate(\"x\", " + value + ", null, null, null, null, \"1\", \"m\")),"
                + " List.of(), List.of(), List.of(), List.of(), List.of(), List.of());";
    }

    private static final String SOURCE = """
            package outside;

            import java.util.List;
            import org.tableweather.analyzers.spi.*;
            import org.tableweather.schema.record.*;

            public final class Counting implements Analyzer<Count> {
                private static volatile boolean on = true;

                public Counting() { %s }

                @Override public AnalyzerInfo info() {
                    return new AnalyzerInfo("counting", "1.2.3", "1", "Counting", "How many?", "counts", List.of("none"),
                            List.of("always"), List.of(new ParameterInfo("per", "what", "1", "trial", List.of())),
                            List.of(), List.of("CommonPractice"));
                }

                @Override public Class<Count> summaryType() { return Count.class; }

                @Override public Count summarise(SessionRecord session, Iterable<Trial> trials) { %s }

                @Override public Analysis conclude(SummarySource<Count> summaries, Parameters parameters) { %s }
            }
            """;
}
