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
 * Bounds every body before anything reads it. Archives are streamed and may be large, the archive in a form is written to
 * disk and bounded; every other body is read into memory, so it must be small and say its length.
 */
@ApplicationScoped
class BodyLimit {
    private static final int SMALL = 64 << 10;
    private static final String FORM = "/contribute";
    private static final int BEFORE_EVERYTHING_ELSE = 1000;

    private final long maxUpload;
    private final long maxForm;

    BodyLimit(
            @ConfigProperty(name = "tableweather.upload.max-bytes") long maxUpload,
            @ConfigProperty(name = "tableweather.checks.max-bytes") long maxChecked) {
        this.maxUpload = maxUpload;
        this.maxForm = maxChecked + SMALL;
    }

    void register(@Observes Filters filters) {
        filters.register(this::filter, BEFORE_EVERYTHING_ELSE);
    }

    private void filter(RoutingContext context) {
        HttpServerRequest request = context.request();
        String length = request.getHeader(HttpHeaders.CONTENT_LENGTH);
        Bound bound = bound(request);
        if (length == null && !bound.streamed() && request.getHeader(HttpHeaders.TRANSFER_ENCODING) != null) {
            refuse(context, ErrorCode.LENGTH_REQUIRED, "this body must say its length: send Content-Length");
        } else if (length != null && exceeds(length, bound.bytes())) {
            String detail = "the body has " + length + " bytes, more than the " + bound.bytes() + " allowed for "
                    + bound.words();
            refuse(context, ErrorCode.BODY_TOO_LARGE, detail);
        } else {
            context.next();
        }
    }

    /** How large a body may be, whether it may come without its length, and for what this holds with a way on. */
    private record Bound(long bytes, boolean streamed, String words) {}

    private Bound bound(HttpServerRequest request) {
        String type = String.valueOf(request.getHeader(HttpHeaders.CONTENT_TYPE));
        if (type.startsWith("application/zip") || type.startsWith("application/partial-upload")) {
            String words = "archives: split it, or have the operator raise TABLEWEATHER_UPLOAD_MAX_BYTES";
            return new Bound(maxUpload, true, words);
        }
        if (type.startsWith("multipart/form-data") && request.path().equals(FORM)) {
            return new Bound(
                    maxForm,
                    false,
                    "a folder handed over on this page: hand it over with the command tableweather contribute");
        }
        return new Bound(SMALL, false, "JSON: archives go as application/zip");
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
        boolean page = ProblemPage.isFor(problem.instance());
        // the body is not read: the connection cannot be used again
        context.response()
                .setStatusCode(code.status())
                .putHeader(HttpHeaders.CONTENT_TYPE, page ? ProblemPage.MEDIA_TYPE : Problem.MEDIA_TYPE)
                .putHeader(HttpHeaders.CONNECTION, HttpHeaders.CLOSE)
                .end(page ? Buffer.buffer(ProblemPage.of(problem)) : Buffer.buffer(ProblemJson.bytes(problem)));
    }
}
