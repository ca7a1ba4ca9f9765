package org.tableweather.server.web;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * One page of a list that is walked by key: stable while rows are added, equally fast at its end.
 *
 * @param items the rows of this page
 * @param next cursor of the next page; empty on the last one
 */
public record Page<T>(List<T> items, Optional<String> next) {
    /** Rows of a page when no limit is given. */
    public static final int DEFAULT_LIMIT = 100;

    /** Most rows of a page. */
    public static final int MAX_LIMIT = 1000;

    /**
     * A page from one row more than it may hold.
     *
     * @param rows up to {@code limit + 1} of them
     * @param limit rows of a page
     * @param key what the next page must follow
     */
    public static <T> Page<T> of(List<T> rows, int limit, Function<T, String> key) {
        if (rows.size() <= limit) {
            return new Page<>(List.copyOf(rows), Optional.empty());
        }
        List<T> items = List.copyOf(rows.subList(0, limit));
        return new Page<>(items, Optional.of(cursor(key.apply(items.get(limit - 1)))));
    }

    /**
     * The page as JSON: the rows under their name, then {@code next}, null on the last page.
     *
     * @param name of the rows
     */
    public Map<String, Object> body(String name) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put(name, items);
        body.put("next", next);
        return body;
    }

    /** An opaque cursor. */
    public static String cursor(String key) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(key.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * The key in a cursor.
     *
     * @throws Refusal when it is none of ours
     */
    public static String key(String cursor) {
        try {
            return new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            throw badCursor(cursor);
        }
    }

    /**
     * The number in a cursor.
     *
     * @throws Refusal when it is none of ours
     */
    public static long number(String cursor) {
        try {
            return Long.parseLong(key(cursor));
        } catch (NumberFormatException e) {
            throw badCursor(cursor);
        }
    }

    /** Refuses a cursor that no page of ours gave. */
    public static Refusal badCursor(String cursor) {
        return new Refusal(
                ErrorCode.BAD_REQUEST, "after = " + cursor + " is no cursor: take it from 'next' of the page before");
    }

    /**
     * A limit within its bound.
     *
     * @param limit as asked; null for the default
     * @throws Refusal when it is no number in 1..{@value #MAX_LIMIT}
     */
    public static int limit(String limit) {
        if (limit == null) {
            return DEFAULT_LIMIT;
        }
        if (limit.matches("[0-9]{1,4}")) {
            int number = Integer.parseInt(limit);
            if (number >= 1 && number <= MAX_LIMIT) {
                return number;
            }
        }
        throw new Refusal(
                ErrorCode.BAD_REQUEST,
                "limit = " + limit + " is no number in 1.." + MAX_LIMIT + ": ask for less and follow 'next'");
    }
}
