package org.tableweather.server.analysis;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.tableweather.server.web.Words;

/**
 * A run as a page shows it.
 *
 * @param id of it
 * @param analyzer id and version
 * @param analyzerId id alone
 * @param active whether an attempt is on its way
 * @param state where it stands, in words
 * @param parameters that are set
 * @param sessions that went in
 * @param hash names them
 * @param attempts number, state, when, and what became of each
 * @param sha256 of the kept result; empty while there is none
 */
record RunPageView(
        String id,
        String analyzer,
        String analyzerId,
        boolean active,
        String state,
        List<Map.Entry<String, String>> parameters,
        String sessions,
        String hash,
        List<List<String>> attempts,
        String sha256) {
    RunPageView {
        parameters = List.copyOf(parameters);
        attempts = List.copyOf(attempts);
    }

    static RunPageView of(RunView run) {
        return new RunPageView(
                run.id(),
                run.analyzer() + " " + run.version(),
                run.analyzer(),
                run.isActive(),
                words(run),
                run.parameters().entrySet().stream()
                        .filter(parameter -> !parameter.getValue().isEmpty())
                        .toList(),
                Words.counted(run.dataset().sessions(), "session"),
                run.dataset().hash(),
                run.attempts().stream().map(RunPageView::attempt).toList(),
                run.result().map(RunView.Result::sha256).orElse(""));
    }

    /** Heads of the columns of {@link #attempts}. */
    public List<String> attemptNames() {
        return List.of("Attempt", "State", "Asked for", "Began", "Ended", "What became of it");
    }

    /** Where a run stands, in words. */
    static String words(RunView run) {
        return switch (run.latest().state()) {
            case QUEUED -> "It waits for its turn.";
            case RUNNING ->
                "It is being made" + run.progress().map(RunPageView::words).orElse("") + ".";
            case DONE -> "It is done.";
            case FAILED -> "It failed: " + run.latest().failure().orElse("no reason was kept") + ".";
            case CANCELLED -> "It was cancelled.";
            case INTERRUPTED -> "The server was ended before it was made.";
        };
    }

    private static String words(Progress progress) {
        String what = progress.what().isEmpty() ? progress.step() : progress.step() + ", " + progress.what();
        return progress.total() > 0
                ? String.format(Locale.ROOT, ": %s, %,d of %,d", what, progress.done(), progress.total())
                : ": " + what;
    }

    private static List<String> attempt(AttemptView attempt) {
        String same = attempt.sameBytes()
                .map(equal -> equal ? "the very bytes that are kept" : "other bytes than those that are kept")
                .orElse("");
        return List.of(
                Integer.toString(attempt.number()),
                attempt.state().schemaName(),
                Words.minute(Optional.of(attempt.requestedAt())),
                Words.minute(attempt.startedAt()),
                Words.minute(attempt.endedAt()),
                attempt.failure().orElse(same));
    }
}
