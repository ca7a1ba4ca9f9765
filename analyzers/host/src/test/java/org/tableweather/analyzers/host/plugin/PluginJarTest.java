package org.tableweather.analyzers.host.plugin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.schema.jar.CompiledJar;

/** What is in a jar, what it sees, and what is said when it cannot be used. */
class PluginJarTest {

    @TempDir
    Path root;

    private List<Analyzer<?>> analyzers(CompiledJar compiled) throws IOException, PluginRefused {
        return PluginJar.analyzers(compiled.writeTo(root.resolve("outside.jar")));
    }

    private static <S> String concluded(Analyzer<S> analyzer) {
        return AnalysisRun.conclude(analyzer, Summaries.of(List.of()), java.util.Map.of())
                .analysis()
                .fold(Analysis.Estimated::sentence, Analysis.Declined::detail);
    }

    @Test
    void findsTheAnalyzerWithItsInfo() throws Exception {
        List<Analyzer<?>> found = analyzers(OutsideAnalyzers.sound());

        assertThat(found).hasSize(1);
        assertThat(found.get(0).info().id()).isEqualTo("counting");
        assertThat(concluded(found.get(0))).isEqualTo("0 attempts, {per=trial}");
    }

    @Test
    void seesTheSpiTheSchemaAndTheJdkAlone() throws Exception {
        String look = "StringBuilder seen = new StringBuilder(); for (String name : List.of("
                + "\"org.tableweather.analyzers.spi.Analyzer\", \"org.tableweather.schema.record.Trial\", \"java.sql.Connection\","
                + "\"com.fasterxml.jackson.annotation.JsonProperty\","
                + "\"org.tableweather.analyzers.host.AnalysisRun\", \"com.fasterxml.jackson.databind.ObjectMapper\","
                + "\"org.jfree.chart.JFreeChart\", \"org.junit.jupiter.api.Test\")) {"
                + " try { Class.forName(name); seen.append(name.replaceAll(\".*\\\\.\", \"\")).append(' '); }"
                + " catch (ClassNotFoundException e) { } }"
                + " return new Analysis.Declined(Analysis.Reason.DEGENERATE, seen + \"\" + getClass().getResource("
                + "\"/org/tableweather/analyzers/host/AnalysisRun.class\"), parameters.values(), List.of(), List.of());";

        assertThat(concluded(analyzers(OutsideAnalyzers.concluding(look)).get(0)))
                .isEqualTo("Analyzer Trial Connection JsonProperty null");
    }

    @Test
    void findsItsOwnResources() throws Exception {
        String read = "try (var in = getClass().getResourceAsStream(\"/outside/words.txt\")) {"
                + " return new Analysis.Declined(Analysis.Reason.DEGENERATE, new String(in.readAllBytes()),"
                + " parameters.values(), List.of(), List.of()); } catch (java.io.IOException e) { throw new Error(e); }";

        assertThat(concluded(analyzers(OutsideAnalyzers.concluding(read).entry("outside/words.txt", "so it is"))
                        .get(0)))
                .isEqualTo("so it is");
    }

    @Test
    void refusesWhatIsNoJar() throws IOException {
        Path text = Files.writeString(root.resolve("notes.jar"), "no jar at all");

        assertThatThrownBy(() -> PluginJar.analyzers(text))
                .isInstanceOf(PluginRefused.class)
                .hasMessage("notes.jar is not a jar");
        assertThatThrownBy(() -> PluginJar.analyzers(root))
                .isInstanceOf(PluginRefused.class)
                .hasMessageContaining("is not a jar, but a folder");
        assertThatThrownBy(() -> PluginJar.analyzers(root.resolve("none.jar"))).isInstanceOf(NoSuchFileException.class);
    }

    @Test
    void refusesADamagedJar() throws IOException {
        Path jar = OutsideAnalyzers.sound().writeTo(root.resolve("outside.jar"));
        byte[] bytes = Files.readAllBytes(jar);
        Files.write(jar, java.util.Arrays.copyOf(bytes, bytes.length / 2));

        assertThatThrownBy(() -> PluginJar.analyzers(jar))
                .isInstanceOf(PluginRefused.class)
                .hasMessageContaining("outside.jar");
    }

    @Test
    void refusesAJarWithoutAnAnalyzer() {
        assertThatThrownBy(() -> analyzers(CompiledJar.against(Analyzer.class).entry("readme.txt", "hello")))
                .isInstanceOf(PluginRefused.class)
                .hasMessage("outside.jar holds no analyzer: it has no META-INF/services/"
                        + "org.tableweather.analyzers.spi.Analyzer");
        assertThatThrownBy(() -> analyzers(CompiledJar.against(Analyzer.class).service(Analyzer.class, "# nobody")))
                .hasMessageEndingWith("names none");
    }

    @Test
    void refusesAJarThatLacksClasses() {
        assertThatThrownBy(() -> analyzers(OutsideAnalyzers.sound().without("outside.Counting")))
                .isInstanceOf(PluginRefused.class)
                .hasMessageContaining("outside.Counting");
        assertThatThrownBy(() -> analyzers(OutsideAnalyzers.sound().without("outside.Count")))
                .isInstanceOf(PluginRefused.class)
                .hasMessage("outside.jar lacks the class outside.Count");
    }

    @Test
    void refusesAnAnalyzerThatCannotBeMade() {
        assertThatThrownBy(() ->
                        analyzers(OutsideAnalyzers.jar("throw new Error(\"ouch\");", "return null;", "return null;")))
                .isInstanceOf(PluginRefused.class)
                .hasMessage("outside.jar: its analyzer cannot be made: java.lang.Error: ouch");
    }

    @Test
    void refusesAProviderThatIsNoAnalyzer() {
        assertThatThrownBy(() -> analyzers(OutsideAnalyzers.sound().service(Analyzer.class, "outside.Count")))
                .isInstanceOf(PluginRefused.class)
                .hasMessageContaining("outside.Count");
    }

    @Test
    void namesTheJarWhenItsAnalyzerThrowsOrReturnsNothing() throws Exception {
        assertThatThrownBy(() -> concluded(analyzers(OutsideAnalyzers.concluding("throw new Error(\"ouch\");"))
                        .get(0)))
                .isInstanceOf(PluginFailure.class)
                .hasMessage("the analyzer counting 1.2.3 of outside.jar threw in conclude: java.lang.Error: ouch");
        assertThatThrownBy(() -> concluded(
                        analyzers(OutsideAnalyzers.concluding("return null;")).get(0)))
                .hasMessage("the analyzer counting 1.2.3 of outside.jar returned null from conclude");
    }
}
