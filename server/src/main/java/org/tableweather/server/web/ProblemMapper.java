package org.tableweather.server.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.ForbiddenException;
import io.quarkus.security.UnauthorizedException;
import jakarta.annotation.Priority;
import jakarta.validation.ConstraintViolationException;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;
import org.tableweather.analyzers.host.plugin.PluginFailure;

/** Makes a problem of whatever went wrong. The only place that does. */
@Priority(Priorities.USER - 1)
class ProblemMapper {
    private static final Logger LOG = Logger.getLogger(ProblemMapper.class);
    private static final String TOKEN_REMEDY =
            ": send 'Authorization: Bearer tw_...' with a token that is neither expired nor revoked";

    private final AllowedMethods allowed;

    ProblemMapper(AllowedMethods allowed) {
        this.allowed = allowed;
    }

    @ServerExceptionMapper
    Response refused(Refusal refusal, UriInfo uri) {
        Response.ResponseBuilder answer = answer(refusal.code(), refusal.getMessage(), uri, refusal.more());
        refusal.headers().forEach(answer::header);
        return answer.build();
    }

    @ServerExceptionMapper
    Response byPlugin(PluginFailure failure, UriInfo uri) {
        LOG.warnf("%s", failure.getMessage());
        return answer(ErrorCode.PLUGIN_FAILED, failure.getMessage(), uri, Map.of())
                .build();
    }

    @ServerExceptionMapper
    Response byFramework(WebApplicationException e, UriInfo uri) {
        if (e.getCause() instanceof JsonProcessingException json) {
            return badJson(json, uri);
        }
        ErrorCode code = ErrorCode.ofStatus(e.getResponse().getStatus());
        if (code == ErrorCode.INTERNAL) {
            return unexpected(e, uri);
        }
        String detail =
                switch (code) {
                    case NOT_FOUND ->
                        uri.getPath() + " does not exist: "
                                + (ProblemPage.isFor(uri.getPath())
                                        ? "the foot of this page lists all pages"
                                        : "/api/v1/openapi lists every address");
                    case METHOD_NOT_ALLOWED ->
                        uri.getPath()
                                + " does not take this method: the header Allow, or /api/v1/openapi, lists those it takes";
                    case NOT_ACCEPTABLE ->
                        "the header Accept asks for no media type that " + uri.getPath()
                                + " can make: /api/v1/openapi lists them";
                    case UNSUPPORTED_MEDIA_TYPE ->
                        "the header Content-Type names no media type that " + uri.getPath()
                                + " takes: /api/v1/openapi lists them";
                    default -> String.valueOf(e.getMessage());
                };
        Response.ResponseBuilder answer = answer(code, detail, uri, Map.of());
        return code == ErrorCode.METHOD_NOT_ALLOWED
                ? answer.header(HttpHeaders.ALLOW, allowed.of(uri.getPath())).build()
                : answer.build();
    }

    @ServerExceptionMapper
    Response badJson(JsonProcessingException e, UriInfo uri) {
        String where = e.getLocation() == null
                ? ""
                : " at line " + e.getLocation().getLineNr() + ", column "
                        + e.getLocation().getColumnNr();
        String detail = e.getOriginalMessage() + where + ": /api/v1/openapi shows the JSON that is taken here";
        return answer(ErrorCode.MALFORMED_BODY, detail, uri, Map.of()).build();
    }

    /** The framework has a mapper of its own for this one; the nearest class wins. */
    @ServerExceptionMapper
    Response badField(MismatchedInputException e, UriInfo uri) {
        return badJson(e, uri);
    }

    @ServerExceptionMapper
    Response invalid(ConstraintViolationException e, UriInfo uri) {
        List<String> violations = e.getConstraintViolations().stream()
                .map(violation -> violation.getPropertyPath() + " = " + violation.getInvalidValue() + ": "
                        + violation.getMessage())
                .sorted()
                .toList();
        String detail = String.join("; ", violations);
        return answer(ErrorCode.INVALID_FIELD, detail, uri, Map.of("violations", violations))
                .build();
    }

    @ServerExceptionMapper
    Response tokenRefused(AuthenticationFailedException e, UriInfo uri) {
        Throwable cause = e.getCause();
        if (cause instanceof Refusal refusal) {
            return refused(refusal, uri);
        }
        return challenge("the token is unknown, expired or revoked" + TOKEN_REMEDY, uri);
    }

    @ServerExceptionMapper
    Response tokenMissing(UnauthorizedException e, UriInfo uri) {
        return challenge("no token was sent" + TOKEN_REMEDY, uri);
    }

    @ServerExceptionMapper
    Response scopeMissing(ForbiddenException e, UriInfo uri) {
        String detail = "the token's scopes do not allow this: use a token with the scope that /api/v1/openapi names";
        return answer(ErrorCode.MISSING_SCOPE, detail, uri, Map.of()).build();
    }

    @ServerExceptionMapper
    Response unexpected(Throwable e, UriInfo uri) {
        if (isDatabaseAway(e)) {
            LOG.error("the database does not answer", e);
            String detail = "the database does not answer: try again in a minute, then tell the operator";
            return answer(ErrorCode.DATABASE_UNAVAILABLE, detail, uri, Map.of())
                    .header(HttpHeaders.RETRY_AFTER, "60")
                    .build();
        }
        LOG.errorf(e, "unexpected failure at %s", uri.getPath());
        String detail = "the server failed at " + uri.getPath() + ": its log says more; tell the operator";
        return answer(ErrorCode.INTERNAL, detail, uri, Map.of()).build();
    }

    /** SQLSTATE class 08: connection; 57P: the server shuts down; 53: it has none left; none at all: nor has our pool. */
    private static boolean isDatabaseAway(Throwable e) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException sql
                    && String.valueOf(sql.getSQLState()).matches("08...|57P..|53...|null")) {
                return true;
            }
        }
        return false;
    }

    private static Response challenge(String detail, UriInfo uri) {
        return answer(ErrorCode.NOT_AUTHENTICATED, detail, uri, Map.of())
                .header(HttpHeaders.WWW_AUTHENTICATE, "Bearer")
                .build();
    }

    private static Response.ResponseBuilder answer(
            ErrorCode code, String detail, UriInfo uri, Map<String, Object> more) {
        Problem problem = Problem.of(code, detail, uri.getPath(), more);
        Response.ResponseBuilder answer = Response.status(code.status()).header(HttpHeaders.CACHE_CONTROL, "no-store");
        return ProblemPage.isFor(uri.getPath())
                ? answer.type(ProblemPage.MEDIA_TYPE).entity(ProblemPage.of(problem))
                : answer.type(Problem.MEDIA_TYPE).entity(ProblemJson.bytes(problem));
    }
}
