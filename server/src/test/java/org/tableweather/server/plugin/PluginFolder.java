package org.tableweather.server.plugin;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.tableweather.server.Examples;

/** A plugin folder with a sound jar, hostile ones, and some that must not be loaded. */
public final class PluginFolder implements QuarkusTestResourceLifecycleManager {
    private Path folder;

    @Override
    public Map<String, String> start() {
        try {
            folder = Files.createTempDirectory("tableweather-plugins");
            OutsideJar.pin(OutsideJar.example().writeTo(folder.resolve("cushion.jar")));
            hostile("loud", "System.out.println(\"garbage\"); " + OutsideJar.COUNT, OutsideJar.TELL);
            hostile("endless", OutsideJar.COUNT, "while (on) { } return null;");
            hostile(
                    "greedy",
                    OutsideJar.COUNT,
                    "var all = new java.util.ArrayList<long[]>(); while (on) { all.add(new long[1 << 20]); } return null;");
            hostile("leaver", "System.exit(0); return null;", OutsideJar.TELL);
            hostile("thrower", OutsideJar.COUNT, "throw new Error(\"ouch\");");
            hostile("silent", OutsideJar.COUNT, "return null;");
            hostile("vague", OutsideJar.COUNT, "return answer(Double.NaN);");
            OutsideJar.of("unpinned", OutsideJar.COUNT, OutsideJar.TELL).writeTo(folder.resolve("unpinned.jar"));
            hostile("rebound-humidity", OutsideJar.COUNT, OutsideJar.TELL);
            OutsideJar.pin(Files.writeString(folder.resolve("notes.jar"), "not a jar"));
            return Map.of(
                    "tableweather.plugins.folder", folder.toString(),
                    "tableweather.plugins.seconds", "15",
                    "tableweather.plugins.memory-mb", "64");
        } catch (Exception e) {
            throw new IllegalStateException("the jars cannot be made", e);
        }
    }

    private void hostile(String id, String summarise, String conclude) throws Exception {
        OutsideJar.pin(OutsideJar.of(id, summarise, conclude).writeTo(folder.resolve(id + ".jar")));
    }

    @Override
    public void stop() {
        try {
            Examples.delete(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
