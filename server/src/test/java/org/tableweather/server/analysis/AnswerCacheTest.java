package org.tableweather.server.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.AnalyzerInfo;

class AnswerCacheTest {
    private static final AnalyzerInfo INFO = new AnalyzerInfo(
            "none", "1.0.0", "1", "None", "None?", "none", List.of(), List.of(), List.of(), List.of(), List.of());

    private final AnswerCache cache = new AnswerCache(100_000);
    private final AtomicInteger made = new AtomicInteger();

    /** An answer whose body has about so many bytes. */
    private Answer make(int size) {
        made.incrementAndGet();
        return Answer.of(new AnalysisRun(
                INFO,
                new AnalysisRun.Dataset(0, 0, 0, false, ""),
                new Analysis.Declined(
                        Analysis.Reason.TOO_FEW_RECORDS, "x".repeat(size), Map.of(), List.of(), List.of())));
    }

    @Test
    void makesAnAnswerOnce() {
        Answer first = cache.get("a", () -> make(10));

        assertThat(cache.get("a", () -> make(11))).isSameAs(first);
        assertThat(made).hasValue(1);
    }

    @Test
    void letsGoOfWhatWasNotAskedForLongest() {
        cache.get("a", () -> make(40_000));
        cache.get("b", () -> make(40_000));
        cache.get("a", () -> make(40_000));
        cache.get("c", () -> make(40_000));
        assertThat(made).hasValue(3);

        cache.get("a", () -> make(40_000));
        assertThat(made).as("a was asked for again and stayed").hasValue(3);
        cache.get("b", () -> make(40_000));
        assertThat(made).as("b went").hasValue(4);
    }

    @Test
    void doesNotKeepWhatIsLargerThanAll() {
        cache.get("large", () -> make(101_000));
        cache.get("small", () -> make(60_000));
        cache.get("large", () -> make(101_000));
        assertThat(made).hasValue(3);
    }

    @Test
    void doesNotKeepAFailure() {
        assertThatThrownBy(() -> cache.get("a", () -> {
                    throw new IllegalStateException("no");
                }))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("no");
        assertThat(cache.get("a", () -> make(3)).body()).isNotEmpty();
    }

    @Test
    void makesOneAnswerForAllWhoAskAtOnce() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch all = new CountDownLatch(1);
        ExecutorService threads = Executors.newFixedThreadPool(5);
        try {
            List<Future<Answer>> asked = new ArrayList<>();
            asked.add(threads.submit(() -> cache.get("a", () -> {
                begun.countDown();
                try {
                    all.await(30, TimeUnit.SECONDS);
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
                return make(7);
            })));
            assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
            for (int i = 0; i < 4; i++) {
                asked.add(threads.submit(() -> cache.get("a", () -> make(8))));
            }
            all.countDown();
            for (Future<Answer> answer : asked) {
                assertThat(answer.get(30, TimeUnit.SECONDS))
                        .isSameAs(asked.get(0).get(30, TimeUnit.SECONDS));
            }
            assertThat(made).hasValue(1);
        } finally {
            threads.shutdownNow();
        }
    }
}
