package org.tableweather.cluster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A cluster that is not there is told in seconds. */
class ClusterContextTest {
    @Test
    void nobodyAtTheAddress() throws IOException {
        int port;
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = socket.getLocalPort();
        }
        String address = "spark://127.0.0.1:" + port;
        assertThatThrownBy(() -> ClusterContext.open(address, Map.of(), 1))
                .isInstanceOfSatisfying(ClusterFailure.class, failure -> {
                    assertThat(failure.exitCode()).isEqualTo(4);
                    assertThat(failure.remedy()).contains("master");
                })
                .hasMessageContaining(address);
    }

    @Test
    void noAddress() {
        assertThatThrownBy(() -> ClusterContext.open("spark://somewhere", Map.of(), 1))
                .isInstanceOfSatisfying(
                        ClusterFailure.class,
                        failure -> assertThat(failure.exitCode()).isEqualTo(2));
    }

    @Test
    void noneNamed() {
        assertThatThrownBy(() -> ClusterContext.open("", Map.of(), 1))
                .isInstanceOf(ClusterFailure.class)
                .hasMessageContaining("no cluster is named");
    }
}
