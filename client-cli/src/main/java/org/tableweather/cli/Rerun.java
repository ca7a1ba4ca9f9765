package org.tableweather.cli;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.digest.Sha256;

/**
 * A kept result beside what was made again.
 *
 * @param run the run after the server made it again
 * @param kept the bytes that the server keeps
 * @param local what was made here
 */
record Rerun(ServerRun run, byte[] kept, Local local) {

    /**
     * What was made here.
     *
     * @param result the bytes; empty when none were made
     * @param whyNot why none were made
     */
    record Local(Optional<byte[]> result, Optional<String> whyNot) {
        static Local made(byte[] result) {
            return new Local(Optional.of(result), Optional.empty());
        }

        static Local notMade(String why) {
            return new Local(Optional.empty(), Optional.of(why));
        }
    }

    /**
     * What came of it.
     *
     * @param id of the run
     * @param analyzer id
     * @param version of the analyzer
     * @param keptSha256 of the bytes that the server keeps
     * @param serverSha256 of the bytes that it made now
     * @param localSha256 of the bytes made here
     * @param notMadeHere why none were made here
     * @param verified whether all that were made are the kept ones
     */
    record Verdict(
            String id,
            String analyzer,
            String version,
            String keptSha256,
            String serverSha256,
            Optional<String> localSha256,
            Optional<String> notMadeHere,
            boolean verified) {}

    Verdict verdict() {
        String sha256 = Sha256.hex(kept);
        Optional<String> here = local.result().map(Sha256::hex);
        boolean verified =
                run.latestSha256().equals(sha256) && here.map(sha256::equals).orElse(true);
        return new Verdict(
                run.id(), run.analyzer(), run.version(), sha256, run.latestSha256(), here, local.whyNot(), verified);
    }

    String text() {
        Verdict verdict = verdict();
        String here = local.result()
                .map(result -> beside(verdict, Sha256.hex(result)) + firstDifference(result))
                .orElseGet(() -> "not made: " + local.whyNot().orElseThrow());
        return "run " + run.id() + ", " + run.analyzer() + " " + run.version() + "\n"
                + "  kept by the server:       sha256 " + verdict.keptSha256() + ", " + kept.length + " bytes\n"
                + "  made again by the server: " + beside(verdict, verdict.serverSha256()) + "\n"
                + "  made again here:          " + here + "\n"
                + (verdict.verified() ? "verified\n" : "NOT VERIFIED: the same inputs did not give the same bytes\n");
    }

    private static String beside(Verdict verdict, String sha256) {
        return sha256.equals(verdict.keptSha256()) ? "the same bytes" : "OTHER BYTES, sha256 " + sha256;
    }

    private String firstDifference(byte[] made) {
        List<String> ours = new String(made, StandardCharsets.UTF_8).lines().toList();
        List<String> theirs = new String(kept, StandardCharsets.UTF_8).lines().toList();
        for (int line = 0; line < Math.max(ours.size(), theirs.size()); line++) {
            String our = line < ours.size() ? ours.get(line).strip() : "nothing";
            String their = line < theirs.size() ? theirs.get(line).strip() : "nothing";
            if (!our.equals(their)) {
                return "; first in line " + (line + 1) + ": kept  " + their + "  here  " + our;
            }
        }
        return "";
    }
}
