package org.tableweather.server.release;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.tableweather.release.Manifest;
import org.tableweather.server.web.Words;

/**
 * A complete release as a page shows it, every figure in words.
 *
 * @param number of it
 * @param title in words
 * @param date of it
 * @param invented whether all its data are made up
 * @param totals how much, in one line
 * @param hash SHA-256 of its manifest
 * @param datasetHash names its sessions
 * @param kinds attempts of each kind
 * @param licences contributions and attempts under each
 * @param members contributions in it
 * @param against what changed since the release before
 * @param previous number of that; empty for the first
 * @param tables its tables together: kind, files, rows, length
 * @param files every other file
 * @param parts every file of a table
 */
record ReleasePageView(
        int number,
        String title,
        String date,
        boolean invented,
        String totals,
        String hash,
        String datasetHash,
        List<List<String>> kinds,
        List<List<String>> licences,
        List<Member> members,
        String against,
        String previous,
        List<List<String>> tables,
        List<FileLine> files,
        List<FileLine> parts) {
    private static final String KIND = "trials/kind=";

    ReleasePageView {
        kinds = List.copyOf(kinds);
        licences = List.copyOf(licences);
        members = List.copyOf(members);
        tables = List.copyOf(tables);
        files = List.copyOf(files);
        parts = List.copyOf(parts);
    }

    /**
     * A contribution in a release.
     *
     * @param title in words
     * @param id its identity
     * @param contributor the name they chose
     * @param licence SPDX id
     * @param sessions how many
     * @param trials how many
     */
    record Member(String title, String id, String contributor, String licence, String sessions, String trials) {

        static Member of(Manifest.Member member) {
            return new Member(
                    member.title().orElse(member.id()),
                    member.id(),
                    member.contributor(),
                    member.licence(),
                    Words.count(member.sessions()),
                    Words.count(member.trials()));
        }
    }

    /**
     * A file.
     *
     * @param path in the release
     * @param bytes its length
     * @param sha256 of its bytes
     */
    record FileLine(String path, String bytes, String sha256) {

        static FileLine of(Manifest.FileEntry file) {
            return new FileLine(file.path(), Words.bytes(file.bytes()), file.sha256());
        }
    }

    static ReleasePageView of(Manifest manifest) {
        List<Manifest.FileEntry> files = manifest.files();
        return new ReleasePageView(
                manifest.number(),
                manifest.title(),
                manifest.date().toString(),
                manifest.invented(),
                totals(manifest.totals()),
                manifest.hash(),
                manifest.datasetHash(),
                kinds(files),
                licences(manifest.contributions()),
                manifest.contributions().stream().map(Member::of).toList(),
                against(manifest),
                manifest.previous()
                        .map(before -> Integer.toString(before.number()))
                        .orElse(""),
                tables(files),
                files.stream()
                        .filter(file -> file.rows().isEmpty())
                        .map(FileLine::of)
                        .toList(),
                files.stream()
                        .filter(file -> file.rows().isPresent())
                        .map(FileLine::of)
                        .toList());
    }

    /** Heads of the columns of {@link #kinds}. */
    public List<String> kindNames() {
        return List.of("Kind", "Attempts");
    }

    /** Heads of the columns of {@link #licences}. */
    public List<String> licenceNames() {
        return List.of("Licence", "Contributions", "Sessions", "Attempts");
    }

    /** Heads of the columns of {@link #tables}. */
    public List<String> tableNames() {
        return List.of("Table", "Files", "Rows", "Length");
    }

    static String totals(Manifest.Totals totals) {
        return Words.counted(totals.trials(), "attempt") + " in " + Words.counted(totals.sessions(), "session") + " of "
                + Words.counted(totals.rooms(), "room") + ", from "
                + Words.counted(totals.contributions(), "contribution") + " by "
                + Words.counted(totals.contributors(), "contributor");
    }

    private static String against(Manifest manifest) {
        Manifest.ChangeCounts changes = manifest.changes();
        return manifest.previous()
                .map(before -> "Against release " + before.number() + " of " + before.date() + ": "
                        + Words.counted(changes.added(), "contribution") + " added, "
                        + Words.count(changes.withdrawn()) + " withdrawn, " + Words.count(changes.unchanged())
                        + " unchanged.")
                .orElse("The first release: all of its contributions are new.");
    }

    private static String table(Manifest.FileEntry file) {
        return file.path().startsWith(KIND)
                ? file.path().substring(KIND.length(), file.path().indexOf('/', KIND.length()))
                : file.path().substring(0, file.path().indexOf('/'));
    }

    private static Map<String, List<Manifest.FileEntry>> byTable(List<Manifest.FileEntry> files) {
        return files.stream()
                .filter(file -> file.rows().isPresent())
                .collect(Collectors.groupingBy(ReleasePageView::table, TreeMap::new, Collectors.toList()));
    }

    private static long rows(List<Manifest.FileEntry> files) {
        return files.stream()
                .map(Manifest.FileEntry::rows)
                .flatMap(Optional::stream)
                .mapToLong(Long::longValue)
                .sum();
    }

    private static List<List<String>> kinds(List<Manifest.FileEntry> files) {
        return byTable(files.stream()
                        .filter(file -> file.path().startsWith(KIND))
                        .toList())
                .entrySet()
                .stream()
                .map(kind -> List.of(kind.getKey(), Words.count(rows(kind.getValue()))))
                .toList();
    }

    private static List<List<String>> tables(List<Manifest.FileEntry> files) {
        return byTable(files).entrySet().stream()
                .map(table -> List.of(
                        name(table.getKey(), table.getValue()),
                        Words.count(table.getValue().size()),
                        Words.count(rows(table.getValue())),
                        Words.bytes(table.getValue().stream()
                                .mapToLong(Manifest.FileEntry::bytes)
                                .sum())))
                .toList();
    }

    private static String name(String table, List<Manifest.FileEntry> files) {
        if (files.get(0).path().startsWith(KIND)) {
            return "trials: " + table;
        }
        return switch (table) {
            case "readings" -> "readings of the climate";
            case "contacts" -> "marked points";
            default -> table;
        };
    }

    private static List<List<String>> licences(List<Manifest.Member> members) {
        return members.stream()
                .collect(Collectors.groupingBy(Manifest.Member::licence, TreeMap::new, Collectors.toList()))
                .entrySet()
                .stream()
                .map(licence -> List.of(
                        licence.getKey(),
                        Words.count(licence.getValue().size()),
                        Words.count(licence.getValue().stream()
                                .mapToInt(Manifest.Member::sessions)
                                .sum()),
                        Words.count(licence.getValue().stream()
                                .mapToLong(Manifest.Member::trials)
                                .sum())))
                .toList();
    }
}
