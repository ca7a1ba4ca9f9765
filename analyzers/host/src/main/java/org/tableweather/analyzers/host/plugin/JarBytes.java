package org.tableweather.analyzers.host.plugin;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.tableweather.schema.digest.Sha256;

/**
 * A jar's bytes, read once.
 *
 * @param name the file's name
 * @param bytes all of it
 */
record JarBytes(String name, byte[] bytes) {
    private static final int LARGEST = 64 << 20;
    private static final int LARGEST_UNPACKED = 256 << 20;
    private static final int AT_ONCE = 1 << 16;

    /**
     * Reads a jar.
     *
     * @throws PluginRefused when it is too large
     * @throws IOException when it cannot be read
     */
    static JarBytes read(Path jar) throws IOException, PluginRefused {
        String name = String.valueOf(jar.getFileName());
        if (!Files.isRegularFile(jar) && Files.exists(jar)) {
            throw new PluginRefused(name + " is not a jar, but a folder", "name the .jar file");
        }
        if (Files.size(jar) > LARGEST) {
            throw new PluginRefused(
                    name + " has " + Files.size(jar) + " bytes > " + LARGEST,
                    "leave out what the analyzer does not use");
        }
        return new JarBytes(name, Files.readAllBytes(jar));
    }

    /** SHA-256, hex. */
    String sha256() {
        return Sha256.hex(bytes);
    }

    /**
     * Its files by name.
     *
     * @throws PluginRefused when it is no jar, damaged, or unpacks to too much
     */
    Map<String, byte[]> entries() throws PluginRefused {
        Map<String, byte[]> entries = new HashMap<>();
        long unpacked = 0;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                byte[] content = content(zip, LARGEST_UNPACKED - unpacked);
                unpacked += content.length;
                entries.put(entry.getName(), content);
            }
        } catch (IOException | IllegalArgumentException e) {
            throw new PluginRefused(name + " is damaged: " + e.getMessage(), "get the jar again", e);
        }
        if (entries.isEmpty()) {
            throw new PluginRefused(name + " is not a jar", "name a jar with an analyzer in it");
        }
        return entries;
    }

    private byte[] content(InputStream entry, long room) throws IOException, PluginRefused {
        ByteArrayOutputStream content = new ByteArrayOutputStream();
        byte[] part = new byte[AT_ONCE];
        for (int read = entry.read(part); read >= 0; read = entry.read(part)) {
            content.write(part, 0, read);
            if (content.size() > room) {
                throw new PluginRefused(
                        name + " unpacks to more than " + LARGEST_UNPACKED + " bytes",
                        "leave out what the analyzer does not use");
            }
        }
        return content.toByteArray();
    }
}
