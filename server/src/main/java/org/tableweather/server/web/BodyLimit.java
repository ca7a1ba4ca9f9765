package org.tableweather.server.web;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.Map;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Bounds every body before anything reads it. Archives are streamed and may be large; every other body is read into
 * memory, so it must be small and say its length.
 */
@ApplicationScoped
class BodyLimit {
    private static final int SMALL = 64 << 10;
    private static final int BEFORE_EVERYTHING_ELSE = 1000;

    private final long maxUpload;

    BodyLimit(@ConfigProperty(name = "tableweather.upload.max-bytes") long maxUpload) {
        this.maxUpload = maxUpload;
    }

    void register(@Observes Filters filters) {
        filters.register(this::filter, BEFORE_EVERYTHING_ELSE);
    }

    private void filter(RoutingContext context) {
        HttpServerRequest request = context.request();
        String length = request.getHeader(HttpHeaders.CONTENT_LENGTH);
        boolean streamed = isStreamed(request);
        long limit = streamed ? maxUpload : SMALL;
        if (length == null && !streamed && request.getHeader(HttpHeaders.TRANSFER_ENCODING) != null) {
            refuse(context, ErrorCode.LENGTH_REQUIRED, "a JSON body must say its length: send Content-Length");
        } else if (length != null && exceeds(length, limit)) {
            String detail = "the body has " + length + " bytes, more than the " + limit + " allowed for "
                    + (streamed
                            ? "archives: split it, or have the operator raise TABLEWEATHER_UPLOAD_MAX_BYTES"
                            : "JSON: archives go as application/zip");
            refuse(context, ErrorCode.BODY_TOO_LARGE, detail);
        } else {
            context.next();
        }
    }

    private static boolean isStreamed(HttpServerRequest request) {
        String type = String.valueOf(request.getHeader(HttpHeaders.CONTENT_TYPE));
        return type.startsWith("application/zip") || type.startsWith("application/partial-upload");
    }

    private static boolean exceeds(String length, long limit) {
        try {
            return Long.parseLong(length) > limit;
        } catch (NumberFormatException e) {
            // more digits than a long holds
            return true;
        }
    }

    private static void refuse(RoutingContext context, ErrorCode code, String detail) {
        Problem problem = Problem.of(code, detail, context.request().path(), Map.of());
        // the body is not read: the connection cannot be used again
        context.response()
                .setStatusCode(code.status())
                .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
                .putHeader(HttpHeaders.CONNECTION, HttpHeaders.CLOSE)
                .end(Buffer.buffer(ProblemJson.bytes(problem)));
    }
}
