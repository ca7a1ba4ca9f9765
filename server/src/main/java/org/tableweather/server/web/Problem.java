package org.tableweather.server.web;

import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.Map;

/**
 * Problem details.
 *
 * @param type a URN that names the kind of problem
 * @param title what it is, the same for every occurrence
 * @param status HTTP status
 * @param code the stable name
 * @param detail value, bound and remedy of this occurrence
 * @param instance path of the request
 * @param more further members: {@code report}, {@code violations} ...
 * @source RFC9457
 */
@JsonPropertyOrder({"type", "title", "status", "code", "detail", "instance"})
public record Problem(
        String type,
        String title,
        int status,
        String code,
        String detail,
        String instance,
        @JsonAnyGetter Map<String, Object> more) {

    /** The media type of a problem. */
    public static final String MEDIA_TYPE = "application/problem+json";

    static Problem of(ErrorCode code, String detail, String instance, Map<String, Object> more) {
        String type = "urn:tableweather:problem:" + code.code();
        return new Problem(type, code.title(), code.status(), code.code(), detail, instance, more);
    }
}
