package org.tableweather.server.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.UncheckedIOException;

/** Problems as bytes. */
final class ProblemJson {
    private static final JsonMapper MAPPER =
            JsonMapper.builder().addModule(new Jdk8Module()).build();

    private ProblemJson() {}

    static byte[] bytes(Problem problem) {
        try {
            return MAPPER.writeValueAsBytes(problem);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException("a problem is made of plain records", e);
        }
    }
}
