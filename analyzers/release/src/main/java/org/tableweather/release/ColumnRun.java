package org.tableweather.release;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.record.Kind;

/** The rows of one shot in one file, in the order of sessions, as columns; of each column one page is unpacked at a time. */
final class ColumnRun implements Closeable {
    private static final List<String> KEYS = List.of(TrialTable.SESSION_DIGEST, TrialTable.ORDINAL, "trial", "made");

    private final Kind kind;
    private final String shot;
    private final RowGroups groups;
    private final DigestRuns digests = new DigestRuns(0);
    private final CountCells ordinals = new CountCells(1);
    private final TextCells trials = new TextCells(2);
    private final MadeCells made = new MadeCells(3);
    private final List<TrialNumber> numbers;
    private final List<NumberCells> columns = new ArrayList<>();
    private int[] places = {};
    private String digest = "";

    /**
     * Opens a run.
     *
     * @param path of the file
     * @param kind of its trials
     * @param shot of the rows
     * @param first number of the first row
     * @param rows how many
     * @param wanted numbers
     */
    ColumnRun(Path path, Kind kind, String shot, long first, long rows, Set<TrialNumber> wanted) throws IOException {
        this.kind = kind;
        this.shot = shot;
        numbers = List.copyOf(wanted);
        List<String> names = new ArrayList<>(KEYS);
        for (TrialNumber number : numbers) {
            columns.add(new NumberCells(names.size()));
            names.add(number.column());
        }
        groups = new RowGroups(path, names, first, rows);
        try {
            mustHaveKeys(path);
            enterNext();
        } catch (RuntimeException e) {
            groups.close();
            throw groups.damaged(e);
        } catch (IOException e) {
            groups.close();
            throw e;
        }
    }

    private void mustHaveKeys(Path path) throws IOException {
        for (int column = 0; column < KEYS.size(); column++) {
            if (!groups.has(column)) {
                throw new IOException(
                        path + " is no table of trials of a release: it has no column " + KEYS.get(column));
            }
        }
    }

    /** Digest of the session whose rows are next; empty after the last. */
    String digest() {
        return digest;
    }

    /**
     * Takes the rows of the session that is next.
     *
     * @throws IOException when the file is damaged or does not fit the session; the message names it
     */
    void takeSession(HeldColumns to) throws IOException {
        String session = digest;
        try {
            while (digest.equals(session)) {
                takeOfGroup(to);
            }
        } catch (RuntimeException | IOException e) {
            throw groups.damaged(e);
        }
    }

    private void takeOfGroup(HeldColumns to) throws IOException {
        int count = digests.takeSame();
        takePlaces(count);
        to.claim(places, count, kind, shot);
        trials.take(to.trials(), places, count);
        made.take(to.made(), places, count);
        for (int i = 0; i < columns.size(); i++) {
            columns.get(i).take(to.numbers(numbers.get(i)), places, count);
        }
        digest = digests.digest();
        if (digest.isEmpty()) {
            enterNext();
        }
    }

    private void takePlaces(int count) throws IOException {
        if (places.length < count) {
            places = new int[2 * count];
        }
        ordinals.take(places, count);
        for (int i = 0; i < count; i++) {
            places[i]--;
        }
    }

    private void enterNext() throws IOException {
        if (!groups.enterNext()) {
            digest = "";
            return;
        }
        digests.enter(groups);
        ordinals.enter(groups);
        trials.enter(groups);
        made.enter(groups);
        for (NumberCells column : columns) {
            column.enter(groups);
        }
        digest = digests.digest();
    }

    @Override
    public void close() throws IOException {
        groups.close();
    }
}
