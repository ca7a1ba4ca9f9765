package org.tableweather.server.web;

import java.util.LinkedHashMap;
import java.util.Map;

/** A request that is refused with a code; the mapper makes it a problem. */
public final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final ErrorCode code;
    private final transient Map<String, Object> more = new LinkedHashMap<>();
    private final transient Map<String, String> headers = new LinkedHashMap<>();

    /**
     * Refuses.
     *
     * @param code why
     * @param detail value, bound and remedy
     */
    public Refusal(ErrorCode code, String detail) {
        super(detail);
        this.code = code;
    }

    /** Adds a member to the problem. */
    public Refusal with(String member, Object value) {
        more.put(member, value);
        return this;
    }

    /** Adds a header to the answer. */
    public Refusal withHeader(String name, String value) {
        headers.put(name, value);
        return this;
    }

    /** Why. */
    public ErrorCode code() {
        return code;
    }

    Map<String, Object> more() {
        return more;
    }

    Map<String, String> headers() {
        return headers;
    }
}
