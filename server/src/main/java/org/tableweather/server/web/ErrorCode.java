package org.tableweather.server.web;

import java.util.Locale;

/** Why a request is refused. Names are part of the contract: never renamed, never reused. */
public enum ErrorCode {
    /** A query parameter, header or body that cannot be read, or lies outside its bound. */
    BAD_REQUEST(400, "The request cannot be understood"),
    /** A query parameter that this address does not take. */
    UNKNOWN_PARAMETER(400, "Unknown parameter"),
    /** The body is not the JSON that this address takes. */
    MALFORMED_BODY(400, "The body cannot be read"),
    /** A field of the body breaks a bound. */
    INVALID_FIELD(400, "A field breaks its bound"),
    /** The body is not what its stated digest says. */
    DIGEST_MISMATCH(400, "The body does not have the stated digest"),
    /** No token, or one that is unknown, expired or revoked. */
    NOT_AUTHENTICATED(401, "A valid token is needed"),
    /** The token lacks the scope. */
    MISSING_SCOPE(403, "The token's scope does not reach this far"),
    /** It belongs to another account. */
    NOT_YOURS(403, "It belongs to another account"),
    /** A form that no page of this server sent. */
    OTHER_SITE(403, "The form comes from elsewhere"),
    /** Nothing is there. */
    NOT_FOUND(404, "Nothing is there"),
    /** The address exists, the method does not. */
    METHOD_NOT_ALLOWED(405, "The method is not allowed here"),
    /** None of the accepted media types can be made. */
    NOT_ACCEPTABLE(406, "None of the accepted media types can be made"),
    /** The state of the thing does not allow it. */
    WRONG_STATE(409, "Its state does not allow this"),
    /** Sessions that a kept analysis was made from are no longer published. */
    SESSIONS_WITHDRAWN(409, "Sessions were withdrawn"),
    /** A kept analysis was made by another version of its analyzer, or by one that is not here. */
    ANALYZER_CHANGED(409, "The analyzer is another one now"),
    /** The name is taken. */
    NAME_TAKEN(409, "The name is taken"),
    /** An upload goes on at another offset, or is being written to. */
    UPLOAD_OFFSET(409, "The upload goes on elsewhere"),
    /** A body without a stated length, where one is needed. */
    LENGTH_REQUIRED(411, "The length of the body must be stated"),
    /** The body is larger than allowed. */
    BODY_TOO_LARGE(413, "The body is too large"),
    /** A body of another media type than this address takes. */
    UNSUPPORTED_MEDIA_TYPE(415, "The body has a media type that is not taken here"),
    /** The checks refuse the contribution. */
    CONTRIBUTION_REFUSED(422, "The checks refuse the contribution"),
    /** Too many refused tokens from one address. */
    TOO_MANY_FAILURES(429, "Too many refused tokens"),
    /** As many analyses as may are being made, or wait; of all callers together, or of this one. */
    TOO_MANY_RUNS(429, "Too many analyses wait"),
    /** As many archives as may are being checked; of all callers together, or of this one. */
    TOO_MANY_CHECKS(429, "Too many archives are being checked"),
    /** An analyzer that the operator added broke its contract or its bounds. */
    PLUGIN_FAILED(500, "An added analyzer failed"),
    /** Our own fault. */
    INTERNAL(500, "The server failed"),
    /** The database does not answer. */
    DATABASE_UNAVAILABLE(503, "The database does not answer");

    private final int status;
    private final String title;
    private final String code = name().toLowerCase(Locale.ROOT).replace('_', '-');

    ErrorCode(int status, String title) {
        this.status = status;
        this.title = title;
    }

    /** HTTP status. */
    public int status() {
        return status;
    }

    /** What it is, in words; the same for every occurrence. */
    public String title() {
        return title;
    }

    /** The stable name: {@code not-found}. */
    public String code() {
        return code;
    }

    /** The code for an HTTP status that the framework chose. */
    static ErrorCode ofStatus(int status) {
        return switch (status) {
            case 401 -> NOT_AUTHENTICATED;
            case 403 -> MISSING_SCOPE;
            case 404 -> NOT_FOUND;
            case 405 -> METHOD_NOT_ALLOWED;
            case 406 -> NOT_ACCEPTABLE;
            case 411 -> LENGTH_REQUIRED;
            case 413 -> BODY_TOO_LARGE;
            case 415 -> UNSUPPORTED_MEDIA_TYPE;
            default -> status >= 400 && status < 500 ? BAD_REQUEST : INTERNAL;
        };
    }
}
