package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What cannot be meant is told before anything is built or started; the runs themselves: analyzers/cluster. */
class SparkRunTest {
    @TempDir
    Path folder;

    @Test
    void readsOneRelease() {
        Ran ran = Ran.with(
                "analyze", "rebound-humidity", "--spark", "local[2]", "--data", folder.toString(), folder.toString());
        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("--spark reads one release, --data names 2 paths");
    }

    @Test
    void aClusterHasNoServersPool() {
        Ran ran = Ran.with("analyze", "rebound-humidity", "--spark", "local[2]");
        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("--data names 0 paths");
    }

    @Test
    void settingsNeedACluster() {
        Ran ran = Ran.with(
                "analyze",
                "rebound-humidity",
                "--data",
                folder.toString(),
                "--spark-setting",
                "spark.executor.memory=2g");
        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("--spark-setting without --spark");
    }

    @Test
    void anUnknownAnalyzerIsToldBeforeAClusterIsAsked() {
        Ran ran = Ran.with("analyze", "rebound-humidty", "--spark", "local[2]", "--data", folder.toString());
        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("there is no analyzer rebound-humidty");
    }
}
