package org.tableweather.release;

import java.io.IOException;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.schema.record.CameraMarks;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;

/**
 * What a release says of its tables: manifest, changes, check reports, citation.
 *
 * @param facts given
 * @param contributions by id
 * @param sessions in order
 * @param groups of rooms
 */
record Description(
        ReleaseFacts facts,
        Collection<ReleasedContribution> contributions,
        List<SpilledSession> sessions,
        RoomGroups groups) {

    /** Writes all of it, the manifest last. */
    Manifest write(ReleaseFiles files) throws IOException {
        for (ReleasedContribution contribution : contributions) {
            files.text("reports/" + contribution.id() + ".json", ReleaseJson.again(contribution.checkReportJson()));
        }
        shots(files);
        cameras(files);
        Changes changes = Changes.of(facts, contributions);
        files.text(Changes.FILE, ReleaseJson.text(changes));
        describe(manifest(changes, List.of()), files);
        Manifest manifest = manifest(changes, files.entries()).sealed();
        files.manifest(manifest.bytes());
        return manifest;
    }

    private void shots(ReleaseFiles files) throws IOException {
        files.text("shots/catalogue.json", ReleaseJson.text(new Shots(ShotCatalogue.all())));
        for (ReleasedContribution contribution : contributions) {
            if (!contribution.shots().isEmpty()) {
                files.text(
                        "shots/contributions/" + contribution.id() + ".json",
                        ReleaseJson.text(new Shots(contribution.shots())));
            }
        }
    }

    private void cameras(ReleaseFiles files) throws IOException {
        for (ReleasedContribution contribution : contributions) {
            if (!contribution.marks().isEmpty()) {
                files.text(
                        "cameras/contributions/" + contribution.id() + ".json",
                        ReleaseJson.text(new Cameras(contribution.marks())));
            }
        }
    }

    /** A file of known points on frames, in the order in which they were contributed. */
    private record Cameras(List<CameraMarks> marks) {}

    /** A file of definitions, in the order of their ids. */
    private record Shots(List<Shot> shots) {
        Shots {
            shots = shots.stream().sorted(Comparator.comparing(Shot::id)).toList();
        }
    }

    private static void describe(Manifest manifest, ReleaseFiles files) throws IOException {
        Citation citation = new Citation(manifest);
        files.text("CITATION.txt", citation.text());
        files.text("CITATION.cff", citation.citationFile());
        files.text("datacite.json", ReleaseJson.text(citation.dataCite()));
        files.text("LICENCES.md", new LicenceSummary(manifest).markdown());
        files.text("README.md", new ReleaseReadme(manifest, files.entries()).markdown());
        files.text(ResearchCrate.FILE, ReleaseJson.text(new ResearchCrate(manifest, files.entries()).json()));
    }

    private Manifest manifest(Changes changes, List<Manifest.FileEntry> entries) {
        return new Manifest(
                Manifest.SCHEMA_VERSION,
                facts.number(),
                facts.title(),
                facts.date(),
                contributions.stream().allMatch(ReleasedContribution::invented),
                Summaries.hash(sessions.stream().map(SpilledSession::digest).toList()),
                totals(),
                new Manifest.RoomGrouping(groups.bits(), groups.count()),
                facts.previous().map(before -> new Manifest.Previous(before.number(), before.date(), before.hash())),
                changes.counts(),
                members(),
                entries,
                "");
    }

    private Manifest.Totals totals() {
        Set<String> contributors = contributions.stream()
                .map(each -> each.orcid().orElse(each.contributor()))
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> rooms = sessions.stream().map(SpilledSession::roomKey).collect(Collectors.toSet());
        return new Manifest.Totals(
                contributions.size(),
                contributors.size(),
                rooms.size(),
                sessions.size(),
                sessions.stream().mapToLong(SpilledSession::trials).sum());
    }

    private List<Manifest.Member> members() {
        Map<String, List<SpilledSession>> byContribution = sessions.stream()
                .collect(Collectors.groupingBy(SpilledSession::contribution, TreeMap::new, Collectors.toList()));
        return contributions.stream()
                .map(each -> member(each, byContribution.getOrDefault(each.id(), List.of())))
                .toList();
    }

    private static Manifest.Member member(ReleasedContribution contribution, List<SpilledSession> sessions) {
        return new Manifest.Member(
                contribution.id(),
                contribution.title(),
                contribution.licence(),
                contribution.contributor(),
                contribution.orcid(),
                contribution.invented(),
                contribution.archiveSha256(),
                sessions.size(),
                sessions.stream().mapToLong(SpilledSession::trials).sum());
    }
}
