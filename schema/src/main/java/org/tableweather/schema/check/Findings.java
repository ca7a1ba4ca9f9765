package org.tableweather.schema.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.tableweather.schema.caution.Caution;

/** Gathers findings: the first of each check are kept, the rest is counted. Not for use by several threads. */
public final class Findings {
    private static final int VALUE_LENGTH = 80;

    private final Map<String, Tally> tallies = new TreeMap<>();
    private final Map<String, SessionCaution> cautions = new TreeMap<>();

    /** The count and the first findings of one check. */
    private static final class Tally {
        private final Severity severity;
        private final List<Finding> kept = new ArrayList<>(2);
        private long count;

        Tally(Severity severity) {
            this.severity = severity;
        }
    }

    /**
     * Adds a finding.
     *
     * @param check which check
     * @param place where
     * @param value what stands there; null for nothing
     * @param message what is wrong, in words; asked for only if the finding is kept
     */
    public void add(Check check, Place place, String value, Supplier<String> message) {
        add(check, place, value, check.bound(), message);
    }

    /**
     * Adds a finding about a number.
     *
     * @param check which check
     * @param place where; asked for only if the finding is kept
     * @param value what stands there
     * @param message what is wrong, in words; asked for only if the finding is kept
     */
    public void add(Check check, Supplier<Place> place, double value, Supplier<String> message) {
        Tally tally = tallies.computeIfAbsent(check.id(), id -> new Tally(check.severity()));
        tally.count++;
        if (tally.kept.size() < CheckReport.KEPT_PER_CHECK) {
            tally.kept.add(finding(check, place.get(), Double.toString(value), check.bound(), message.get()));
        }
    }

    /**
     * Adds a finding with its own bound.
     *
     * @param check which check
     * @param place where
     * @param value what stands there; null for nothing
     * @param bound the bound as it applies here
     * @param message what is wrong, in words; asked for only if the finding is kept
     */
    public void add(Check check, Place place, String value, String bound, Supplier<String> message) {
        Tally tally = tallies.computeIfAbsent(check.id(), id -> new Tally(check.severity()));
        tally.count++;
        if (tally.kept.size() < CheckReport.KEPT_PER_CHECK) {
            tally.kept.add(finding(check, place, value, bound, message.get()));
        }
    }

    /**
     * A finding by itself.
     *
     * @param check which check
     * @param place where
     * @param value what stands there; null for nothing
     * @param message what is wrong, in words
     */
    public static Finding one(Check check, Place place, String value, String message) {
        return finding(check, place, value, check.bound(), message);
    }

    private static Finding finding(Check check, Place place, String value, String bound, String message) {
        return new Finding(
                check.id(),
                check.severity(),
                place.file(),
                place.row(),
                place.column(),
                Optional.ofNullable(value).map(Findings::shortened),
                bound,
                message,
                check.remedy(),
                check.reference());
    }

    /** Adds a finding made elsewhere. */
    public void add(Finding finding) {
        Tally tally = tallies.computeIfAbsent(finding.check(), id -> new Tally(finding.severity()));
        tally.count++;
        keep(tally, finding);
    }

    /**
     * Adds a caution; of those with one id the gravest is kept, the first of equally grave ones.
     *
     * @param session that calls for it
     * @param caution what to mind
     */
    public void caution(String session, Caution caution) {
        merge(new SessionCaution(session, 1, caution));
    }

    private void merge(SessionCaution one) {
        cautions.merge(one.caution().id(), one, (kept, other) -> {
            boolean graver = other.caution().level().compareTo(kept.caution().level()) > 0;
            SessionCaution gravest = graver ? other : kept;
            return new SessionCaution(gravest.session(), kept.sessions() + other.sessions(), gravest.caution());
        });
    }

    /** Adds all that another gathered. */
    public void addAll(Findings other) {
        other.cautions.values().forEach(this::merge);
        other.tallies.forEach((id, theirs) -> {
            Tally tally = tallies.computeIfAbsent(id, key -> new Tally(theirs.severity));
            tally.count += theirs.count;
            theirs.kept.forEach(finding -> keep(tally, finding));
        });
    }

    private static void keep(Tally tally, Finding finding) {
        if (tally.kept.size() < CheckReport.KEPT_PER_CHECK) {
            tally.kept.add(finding);
        }
    }

    /** Whether nothing was found. */
    public boolean isEmpty() {
        return tallies.isEmpty() && cautions.isEmpty();
    }

    /** Whether anything found forbids acceptance. */
    public boolean refuse() {
        return tallies.values().stream().anyMatch(tally -> tally.severity == Severity.REFUSE);
    }

    /** How often a check found something. */
    public long count(Check check) {
        Tally tally = tallies.get(check.id());
        return tally == null ? 0 : tally.count;
    }

    /**
     * The report of all that was gathered.
     *
     * @param trials rows of trials read
     * @param sessions sessions that have trials
     * @param dialects how each CSV file was understood
     */
    public CheckReport report(long trials, long sessions, Map<String, String> dialects) {
        SortedMap<String, Long> counts = new TreeMap<>();
        List<Finding> kept = new ArrayList<>();
        tallies.forEach((id, tally) -> {
            counts.put(id, tally.count);
            kept.addAll(tally.kept);
        });
        kept.sort(Comparator.comparing(Finding::severity));
        return new CheckReport(
                trials, sessions, List.copyOf(kept), counts, new TreeMap<>(dialects), List.copyOf(cautions.values()));
    }

    /** At most 80 characters, control characters replaced. */
    private static String shortened(String value) {
        String plain = value.length() > VALUE_LENGTH ? value.substring(0, VALUE_LENGTH - 1) + "…" : value;
        return plain.chars().noneMatch(Character::isISOControl) ? plain : plain.replaceAll("\\p{Cntrl}", "�");
    }
}
