package org.tableweather.schema.folder;

import java.io.IOException;
import java.io.InputStream;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.LongConsumer;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;
import org.tableweather.schema.csv.CsvText;
import org.tableweather.schema.csv.Dialect;
import org.tableweather.schema.json.ContributionDocument;
import org.tableweather.schema.json.ContributionJson;
import org.tableweather.schema.record.CameraMarks;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.table.ClimateColumn;
import org.tableweather.schema.table.ContactColumn;
import org.tableweather.schema.table.TrialColumn;

/** One reading of one contribution. */
final class Reading {
    private static final LongConsumer SILENT = bytes -> {};
    /** Most trials of scattered sessions that are gathered at once. */
    private static final int GROUP = 500_000;

    private static final Set<String> FILES =
            Set.of(ContributionJson.FILE, TrialRows.FILE, ClimateRows.FILE, ContactRows.FILE);

    private final ContributionSource source;
    private final ContributionReader.ContributionListener listener;
    private final TrialSink trialSink;
    private final SessionSink sessionSink;
    private final LongConsumer progress;
    private final Findings findings = new Findings();
    private final Map<String, String> dialects = new TreeMap<>();
    private long trials;
    private long sessions;

    Reading(
            ContributionSource source,
            ContributionReader.ContributionListener listener,
            TrialSink trialSink,
            SessionSink sessionSink,
            LongConsumer progress) {
        this.source = source;
        this.listener = listener;
        this.trialSink = trialSink;
        this.sessionSink = sessionSink;
        this.progress = progress;
    }

    ContributionReader.Result run() throws IOException {
        Optional<Contribution> contribution = Optional.empty();
        try {
            SortedMap<String, Long> files = source.files();
            reportUnknownFiles(files);
            ContributionDocument read = readContribution();
            contribution = read.contribution();
            boolean sound = contribution.isPresent() && !findings.refuse();
            if (sound) {
                listener.accept(contribution.get());
            }
            SessionIndex index = new SessionIndex(read, readClimate(contribution), findings);
            readRows(read, index, sound, files.containsKey(ContactRows.FILE));
        } catch (ArchiveRefused e) {
            findings.add(e.finding());
        }
        return new ContributionReader.Result(contribution, findings.report(trials, sessions, dialects));
    }

    private void reportUnknownFiles(SortedMap<String, Long> files) {
        for (String file : files.keySet()) {
            if (!FILES.contains(file) && !file.startsWith("README.")) {
                findings.add(
                        StructureChecks.UNKNOWN_FILE,
                        Place.file(file),
                        file,
                        () -> file + " is not part of the format");
            }
        }
    }

    private ContributionDocument readContribution() throws IOException {
        Optional<InputStream> opened = source.open(ContributionJson.FILE);
        if (opened.isEmpty()) {
            missing(ContributionJson.FILE);
            return ContributionDocument.NOTHING;
        }
        try (InputStream in = opened.get()) {
            return ContributionDocument.read(in, findings);
        }
    }

    private void missing(String file) throws IOException {
        String like = source.files().keySet().stream()
                .filter(name -> name.equalsIgnoreCase(file)
                        || name.toLowerCase(Locale.ROOT).endsWith("/" + file))
                .map(name -> ", but there is " + name)
                .findFirst()
                .orElse("");
        findings.add(StructureChecks.MISSING_FILE, Place.file(file), null, () -> file + " is missing" + like);
    }

    private ClimateLog.ByInstrument readClimate(Optional<Contribution> contribution) throws IOException {
        ClimateRows rows = new ClimateRows(contribution, findings);
        readCsv(ClimateRows.FILE, ClimateColumn.headers(), rows, SILENT);
        return rows.close();
    }

    private void readRows(ContributionDocument read, SessionIndex index, boolean sound, boolean contacts)
            throws IOException {
        if (read.contribution().isEmpty()) {
            readTrials(index, Optional.empty(), new Unassembled(), findings, progress);
        } else {
            SessionEntries entries = new SessionEntries(read.contribution().get());
            Optional<TrialPaths> paths = contacts
                    ? Optional.of(readContacts(index, read.contribution().get().marks()))
                    : Optional.empty();
            try (SessionAssembly assembly = new SessionAssembly(entries, sound, trialSink, sessionSink, findings)) {
                readTrials(index, paths, assembly, findings, progress);
                assembly.endOfFile();
                sessions = assembly.sessionsWithTrials();
                gatherScattered(index, paths, assembly);
                assembly.report();
            }
            paths.ifPresent(found -> found.reportUnseen(findings));
        }
    }

    private TrialPaths readContacts(SessionIndex index, List<CameraMarks> cameras) throws IOException {
        ContactPaths paths = new ContactPaths();
        readCsv(ContactRows.FILE, ContactColumn.headers(), new ContactRows(index, paths, findings), SILENT);
        return new TrialPaths(index, paths, cameras);
    }

    private void readTrials(
            SessionIndex index,
            Optional<TrialPaths> paths,
            TrialRows.Receiver receiver,
            Findings into,
            LongConsumer told)
            throws IOException {
        TrialRows rows = new TrialRows(index, paths, receiver, into);
        if (!readCsv(TrialRows.FILE, TrialColumn.headers(), rows, told)) {
            missing(TrialRows.FILE);
        }
        trials = rows.filledRows();
    }

    private void gatherScattered(SessionIndex index, Optional<TrialPaths> paths, SessionAssembly assembly)
            throws IOException {
        for (BitSet wanted : assembly.scatteredGroups(GROUP)) {
            Map<Integer, SessionTrials> group = new TreeMap<>();
            index.want(wanted);
            CheckedRows again = new TrialRows(index, paths, assembly.gather(group), new Findings());
            try (InputStream in = source.open(TrialRows.FILE).orElseThrow()) {
                CsvText.open(in, TrialColumn.headers(), SILENT).read(again);
            } catch (CsvText.Broken e) {
                return; // told in the first reading
            }
            assembly.completeGroup(group);
        }
    }

    /** Reads one CSV file; false when there is none. */
    private boolean readCsv(String file, Set<String> known, CheckedRows rows, LongConsumer told) throws IOException {
        Optional<InputStream> opened = source.open(file);
        if (opened.isEmpty()) {
            return false;
        }
        try (InputStream in = opened.get()) {
            CsvText text = CsvText.open(in, known, told);
            boolean filled = false;
            try {
                filled = !text.isEmpty() && text.read(rows);
            } catch (CsvText.Broken e) {
                filled = true;
                findings.add(StructureChecks.CSV, Place.row(file, e.row()), null, e::getMessage);
            }
            if (!filled || rows.filledRows() == 0) {
                String what = filled ? " has no row below its header" : " has no content";
                findings.add(StructureChecks.EMPTY_FILE, Place.file(file), null, () -> file + what);
            }
            if (filled) {
                closeCsv(file, text, rows);
            }
        }
        return true;
    }

    private void closeCsv(String file, CsvText text, CheckedRows rows) {
        boolean cutOff = rows.endedShort() && !text.endsWithLineEnd();
        rows.close(cutOff);
        if (cutOff) {
            findings.add(
                    StructureChecks.CUT_OFF,
                    Place.row(file, rows.lastRow()),
                    null,
                    () -> "the last row is short, and its line is not ended");
        }
        long points = rows.decimals.points();
        long commas = rows.decimals.commas();
        Dialect dialect = text.dialect();
        String words = dialect.inWords(points, commas);
        dialects.put(file, words);
        if (points > 0 && commas > 0) {
            findings.add(
                    StructureChecks.MIXED_DECIMAL_MARKS,
                    Place.file(file),
                    null,
                    () -> points + " numbers have a decimal point, " + commas + " a comma");
        } else if (dialect.separator() != ',' || commas > 0) {
            findings.add(
                    StructureChecks.SPREADSHEET_DIALECT,
                    Place.file(file),
                    words,
                    () -> "the file was read as " + words);
        }
    }

    /** Takes rows whose sessions are not known. */
    private static final class Unassembled implements TrialRows.Receiver {
        @Override
        public void refused(int session) {
            // nothing to assemble
        }

        @Override
        public void accept(int session, org.tableweather.schema.record.Trial trial, long row) {
            // nothing to assemble
        }
    }
}
