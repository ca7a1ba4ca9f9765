package org.tableweather.release;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * The content of {@code changes.json}: contributions against the previous release.
 *
 * @param number of this release
 * @param previous number of the release before
 * @param added ids of new contributions
 * @param withdrawn ids of those that were in the release before and are not in this one
 * @param unchanged ids of those in both
 * @param tombstones of all contributions withdrawn so far, by id
 */
record Changes(
        int number,
        Optional<Integer> previous,
        List<String> added,
        List<String> withdrawn,
        List<String> unchanged,
        List<Tombstone> tombstones) {
    static final String FILE = "changes.json";

    Changes {
        previous = previous == null ? Optional.empty() : previous;
        added = added == null ? List.of() : List.copyOf(added);
        withdrawn = withdrawn == null ? List.of() : List.copyOf(withdrawn);
        unchanged = unchanged == null ? List.of() : List.copyOf(unchanged);
        tombstones = tombstones == null ? List.of() : List.copyOf(tombstones);
    }

    static Changes of(ReleaseFacts facts, Collection<ReleasedContribution> contributions) {
        Set<String> now =
                contributions.stream().map(ReleasedContribution::id).collect(Collectors.toCollection(TreeSet::new));
        Set<String> before = facts.previous().map(Manifest::contributions).orElse(List.of()).stream()
                .map(Manifest.Member::id)
                .collect(Collectors.toCollection(TreeSet::new));
        Map<String, Tombstone> tombstones = new TreeMap<>();
        facts.tombstones().forEach(tombstone -> tombstones.put(tombstone.contribution(), tombstone));
        return new Changes(
                facts.number(),
                facts.previous().map(Manifest::number),
                now.stream().filter(id -> !before.contains(id)).toList(),
                before.stream().filter(id -> !now.contains(id)).toList(),
                now.stream().filter(before::contains).toList(),
                List.copyOf(tombstones.values()));
    }

    Manifest.ChangeCounts counts() {
        return new Manifest.ChangeCounts(added.size(), withdrawn.size(), unchanged.size());
    }
}
