package org.tableweather.schema.shots;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.tableweather.schema.record.Shot;

/** The files of the built-in shots, read one by one and strictly. */
public final class BuiltInShots {

    private static final ObjectMapper STRICT = new ObjectMapper()
            .registerModule(new Jdk8Module())
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);

    private BuiltInShots() {}

    /** All of them, by file name. */
    public static List<Shot> all() {
        try (Stream<Path> files = Files.list(
                Path.of(BuiltInShots.class.getResource("/schema/v1/shots").toURI()))) {
            return files.sorted().map(BuiltInShots::read).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    /** One of them. */
    public static Shot byId(String id) {
        return all().stream().filter(shot -> shot.id().equals(id)).findFirst().orElseThrow();
    }

    private static Shot read(Path file) {
        try {
            Shot shot = STRICT.readValue(file.toFile(), Shot.class);
            if (!file.getFileName().toString().equals(shot.id() + ".json")) {
                throw new IllegalStateException(file + " holds shot " + shot.id());
            }
            return shot;
        } catch (IOException e) {
            throw new UncheckedIOException(file.toString(), e);
        }
    }
}
