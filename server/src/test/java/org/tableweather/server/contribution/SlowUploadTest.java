package org.tableweather.server.contribution;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.tableweather.server.Examples;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/** A line that pauses longer than the framework's own ten seconds. */
@QuarkusTest
@QuarkusTestResource(TestData.class)
class SlowUploadTest {
    private static final long PAUSE_MILLIS = 11_000;

    @TestHTTPResource("/")
    URI server;

    @Test
    void isTakenAfterAPause() throws IOException, InterruptedException {
        byte[] archive = Examples.archive("slow-line");
        String token = Tokens.of("slow-line", "contributor", "contribute");
        try (Socket line = new Socket(server.getHost(), server.getPort())) {
            OutputStream out = line.getOutputStream();
            out.write(("POST /api/v1/contributions HTTP/1.1\r\nHost: " + server.getAuthority()
                            + "\r\nAuthorization: Bearer " + token + "\r\nContent-Type: application/zip\r\n"
                            + "Content-Length: " + archive.length + "\r\nConnection: close\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            out.write(archive, 0, archive.length / 2);
            out.flush();
            Thread.sleep(PAUSE_MILLIS);
            out.write(archive, archive.length / 2, archive.length - archive.length / 2);
            out.flush();
            BufferedReader answer =
                    new BufferedReader(new InputStreamReader(line.getInputStream(), StandardCharsets.US_ASCII));
            assertThat(answer.readLine()).isEqualTo("HTTP/1.1 201 Created");
        }
    }
}
