package org.tableweather.server.release;

import org.tableweather.release.Manifest;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/**
 * A file of a release. Only what the manifest names can be had, so no path leads out of the folder.
 *
 * @param path from the folder of the release
 * @param sha256 of its bytes
 * @param mediaType what it is
 */
record FrozenFile(String path, String sha256, String mediaType) {

    /**
     * The file at a path.
     *
     * @throws Refusal when the manifest names none there
     */
    static FrozenFile of(Manifest manifest, String path) {
        if (path.equals(Manifest.FILE)) {
            return new FrozenFile(path, manifest.hash(), "application/json");
        }
        if (path.equals(Manifest.HASH_FILE)) {
            return new FrozenFile(path, manifest.hash() + "-line", "text/plain");
        }
        return manifest.files().stream()
                .filter(file -> file.path().equals(path))
                .findFirst()
                .map(file -> new FrozenFile(path, file.sha256(), mediaType(path)))
                .orElseThrow(() -> new Refusal(
                        ErrorCode.NOT_FOUND,
                        "release " + manifest.number() + " has no file " + path + ": its " + Manifest.FILE
                                + " lists them"));
    }

    private static String mediaType(String path) {
        String ending = path.substring(path.lastIndexOf('.') + 1);
        return switch (ending) {
            case "parquet" -> "application/vnd.apache.parquet";
            case "json" -> path.startsWith("ro-crate") ? "application/ld+json" : "application/json";
            case "md" -> "text/markdown;charset=UTF-8";
            case "cff" -> "application/yaml";
            case "txt" -> "text/plain;charset=UTF-8";
            default -> "application/octet-stream";
        };
    }
}
