package org.tableweather.analyzers.host.plugin;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.host.SummaryJson;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ConclusionListener;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/** The process that runs one jar's analyzers: questions on standard input, replies on standard output. */
final class PluginProcess {
    private final JarBytes jar;
    private List<Analyzer<?>> analyzers;

    PluginProcess(JarBytes jar) {
        this.jar = jar;
    }

    /**
     * Replies until the questions end.
     *
     * @param arguments the jar, its SHA-256, and the longest time of a run in milliseconds
     */
    public static void main(String... arguments) throws IOException, PluginRefused {
        OutputStream replies = new BufferedOutputStream(new FileOutputStream(FileDescriptor.out));
        InputStream questions = System.in;
        // what an analyzer prints must not lie between the replies, nor may it read the questions
        System.setOut(System.err);
        System.setIn(InputStream.nullInputStream());
        LastResort lastResort = new LastResort(Long.parseLong(arguments[2]));
        JarBytes jar = JarBytes.read(Path.of(arguments[0]));
        if (!jar.sha256().equals(arguments[1])) {
            throw new IOException(jar.name() + " has changed since it was pinned");
        }
        PluginProcess process = new PluginProcess(jar);
        for (Optional<byte[]> asked = Frames.read(questions); asked.isPresent(); asked = Frames.read(questions)) {
            lastResort.begin();
            byte[] reply = process.reply(asked.get(), working -> Frames.write(replies, working));
            lastResort.end();
            Frames.write(replies, reply);
        }
        // an analyzer's own threads do not keep it alive
        Runtime.getRuntime().halt(0);
    }

    /** Takes what is written before the reply. */
    @FunctionalInterface
    interface Words {
        void write(byte[] message) throws IOException;
    }

    /**
     * The reply to one question; whatever the analyzer throws is in it.
     *
     * @param words takes what it tells of its progress before, never after this returns
     */
    byte[] reply(byte[] question, Words words) throws IOException {
        Reply reply;
        try (WorkingWords working = new WorkingWords(words)) {
            reply = reply(PluginJson.MAPPER.readValue(question, Question.class), working);
        } catch (PluginRefused refused) {
            reply = Reply.refused(refused);
        } catch (PluginFailure failure) {
            reply = Reply.failed(failure.getMessage());
        } catch (Throwable thrown) {
            reply = Reply.failed(jar.name() + ": " + PluginFailure.inWords(thrown));
        }
        return PluginJson.MAPPER.writeValueAsBytes(reply);
    }

    private Reply reply(Question question, ConclusionListener listener) throws PluginRefused, IOException {
        if (analyzers == null) {
            analyzers = PluginJar.analyzers(jar);
        }
        return switch (question.ask()) {
            case DESCRIBE ->
                Reply.described(
                        analyzers.stream().<AnalyzerInfo>map(Analyzer::info).toList());
            case SUMMARISE -> summarise(find(question.analyzer()), question);
            case CONCLUDE -> conclude(find(question.analyzer()), question, listener);
        };
    }

    private Analyzer<?> find(String id) throws IOException {
        return analyzers.stream()
                .filter(analyzer -> analyzer.info().id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IOException("there is no analyzer " + id));
    }

    private static Reply summarise(Analyzer<?> analyzer, Question question) throws IOException {
        Object summary = analyzer.summarise(question.session(), question.trials());
        return Reply.summarised(PluginJson.MAPPER.readTree(SummaryJson.write(summary)));
    }

    private static <S> Reply conclude(Analyzer<S> analyzer, Question question, ConclusionListener listener)
            throws IOException {
        List<SessionSummary<S>> sessions = new ArrayList<>();
        for (SessionSummary<JsonNode> session : question.sessions()) {
            byte[] json = PluginJson.MAPPER.writeValueAsBytes(session.summary());
            sessions.add(new SessionSummary<>(
                    session.roomKey(),
                    session.sessionKey(),
                    session.digest(),
                    session.invented(),
                    session.trials(),
                    SummaryJson.read(json, analyzer.summaryType())));
        }
        Parameters parameters = Parameters.of(analyzer.info(), Map.copyOf(question.parameters()));
        try {
            Given<S> given = new Given<>(List.copyOf(sessions), question.hash());
            return Reply.concluded(analyzer.conclude(given, parameters, listener));
        } catch (IllegalArgumentException e) {
            return Reply.wrongParameter(PluginFailure.shortened(String.valueOf(e.getMessage())));
        }
    }

    private record Given<S>(List<SessionSummary<S>> sessions, String hash) implements SummarySource<S> {}
}
