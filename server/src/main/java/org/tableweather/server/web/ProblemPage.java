package org.tableweather.server.web;

import io.quarkus.qute.TemplateInstance;

/**
 * A problem as a page: what is wrong, and a way on.
 *
 * @param title what it is
 * @param detail value, bound and remedy
 */
record ProblemPage(String title, String detail) implements TemplateInstance {
    /** The media type of pages. */
    static final String MEDIA_TYPE = "text/html;charset=UTF-8";
    // what programs ask; everything else is asked by people
    private static final String PROGRAMS = "/api/";
    private static final String HEALTH = "/health";

    /** Whether people read what stands at this path. */
    static boolean isFor(String path) {
        return !path.startsWith(PROGRAMS) && !path.startsWith(HEALTH);
    }

    static String of(Problem problem) {
        return new ProblemPage(problem.title(), problem.detail()).render();
    }
}
