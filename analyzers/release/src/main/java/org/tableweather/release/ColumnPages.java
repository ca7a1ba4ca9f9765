package org.tableweather.release;

import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import org.apache.parquet.bytes.ByteBufferInputStream;
import org.apache.parquet.bytes.BytesInput;
import org.apache.parquet.column.ColumnDescriptor;
import org.apache.parquet.column.Dictionary;
import org.apache.parquet.column.Encoding;
import org.apache.parquet.column.ValuesType;
import org.apache.parquet.column.page.DataPage;
import org.apache.parquet.column.page.DataPageV1;
import org.apache.parquet.column.page.DataPageV2;
import org.apache.parquet.column.page.DictionaryPage;
import org.apache.parquet.column.page.PageReader;
import org.apache.parquet.column.values.ValuesReader;
import org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName;

/**
 * The cells of one column, without nesting, in some rows of a row group, one after the other. One page is unpacked at a time.
 *
 * @source ApacheParquet
 */
final class ColumnPages {
    private static final VarHandle DOUBLE =
            MethodHandles.byteArrayViewVarHandle(double[].class, ByteOrder.LITTLE_ENDIAN);
    private static final VarHandle INT = MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);

    private final ColumnDescriptor column;
    private final PageReader pages;
    private final Dictionary dictionary;
    private long row;
    private long pageEnd;
    private PackedNumbers levels;
    private PackedNumbers packed;
    private ValuesReader others;
    private byte[] bytes = {};
    private int at;
    private int[] filled = {};
    private int[] every = {};
    private int[] ids = {};

    /**
     * Starts at the first row of the run in the row group that was entered.
     *
     * @param groups where
     * @param column its number there; not empty
     */
    static ColumnPages of(RowGroups groups, int column) throws IOException {
        ColumnDescriptor descriptor = groups.descriptor(column);
        return new ColumnPages(descriptor, groups.pages().getPageReader(descriptor), groups.first());
    }

    private ColumnPages(ColumnDescriptor column, PageReader pages, long first) throws IOException {
        this.column = column;
        this.pages = pages;
        DictionaryPage page = pages.readDictionaryPage();
        dictionary = page == null ? null : page.getEncoding().initDictionary(column, page);
        do {
            nextPage();
        } while (pageEnd <= first);
        skip((int) (first - row));
    }

    private void skip(int rows) throws IOException {
        int count = read(rows);
        if (packed != null) {
            packed.skip(count);
        } else if (others != null) {
            for (int i = 0; i < count; i++) {
                others.skip();
            }
        } else {
            at += count * Double.BYTES;
        }
    }

    /** How many different values the dictionary has; 0 when there is none. */
    int dictionarySize() {
        return dictionary == null ? 0 : dictionary.getMaxId() + 1;
    }

    /** The values by their ids. */
    Dictionary dictionary() {
        return dictionary;
    }

    /** Goes to the page of the next row when this one is read; says how many rows are left in it. */
    int inPage() throws IOException {
        if (row == pageEnd) {
            nextPage();
        }
        return Math.toIntExact(pageEnd - row);
    }

    /**
     * Goes over the next rows, all of this page. Then their values are to be taken.
     *
     * @return how many of them have a value; which, {@link #filled} tells
     */
    int read(int rows) throws IOException {
        row += rows;
        if (levels == null) {
            if (every.length < rows) {
                every = new int[rows];
                Arrays.setAll(every, i -> i);
            }
            return rows;
        }
        filled = filled.length < rows ? new int[rows] : filled;
        ids = ids.length < rows ? new int[rows] : ids;
        levels.next(ids, rows);
        int count = 0;
        for (int i = 0; i < rows; i++) {
            filled[count] = i;
            count += ids[i];
        }
        return count;
    }

    /** Which of the rows that were just read have a value, counted from the first of them. */
    int[] filled() {
        return levels == null ? every : filled;
    }

    /** Whether the values of this page are small whole numbers: ids of the dictionary, or truths. */
    boolean isPacked() {
        return packed != null;
    }

    /** Those numbers of the rows that have a value. */
    int[] packed(int count) throws IOException {
        ids = ids.length < count ? new int[count] : ids;
        packed.next(ids, count);
        return ids;
    }

    /** The next number, of a page that holds them as they are. */
    double number() {
        double number = (double) DOUBLE.get(bytes, at);
        at += Double.BYTES;
        return number;
    }

    /** Reads the values of all other pages. */
    ValuesReader others() {
        return others;
    }

    private void nextPage() throws IOException {
        DataPage page = pages.readPage();
        if (page == null) {
            throw new IOException("column " + column.getPath()[0] + " has fewer rows than the others");
        }
        row = page.getFirstRowIndex().orElse(pageEnd);
        pageEnd = row + page.getValueCount();
        levels = null;
        if (page instanceof DataPageV2 second) {
            if (second.getNullCount() > 0) {
                levels = new PackedNumbers(padded(second.getDefinitionLevels()), 0, 1);
            }
            start(second.getDataEncoding(), page.getValueCount(), padded(second.getData()), 0);
        } else {
            first((DataPageV1) page);
        }
    }

    private void first(DataPageV1 page) throws IOException {
        byte[] all = padded(page.getBytes());
        int from = 0;
        if (column.getMaxDefinitionLevel() > 0) {
            if (page.getDlEncoding() != Encoding.RLE) {
                throw notRead(page.getDlEncoding());
            }
            levels = new PackedNumbers(all, Integer.BYTES, 1);
            from = Math.addExact(Integer.BYTES, (int) INT.get(all, 0));
        }
        start(page.getValueEncoding(), page.getValueCount(), all, from);
    }

    /** The bytes and some behind them, so that numbers can be read in one go. */
    private static byte[] padded(BytesInput input) throws IOException {
        int size = Math.toIntExact(input.size());
        byte[] padded = new byte[size + PackedNumbers.PADDING];
        input.toInputStream().readNBytes(padded, 0, size);
        return padded;
    }

    private void start(Encoding encoding, int count, byte[] page, int from) throws IOException {
        PrimitiveTypeName type = column.getPrimitiveType().getPrimitiveTypeName();
        packed = null;
        others = null;
        bytes = page;
        at = from;
        if (encoding.usesDictionary()) {
            packed = new PackedNumbers(page, from + 1, page[from]);
        } else if (encoding == Encoding.RLE && type == PrimitiveTypeName.BOOLEAN) {
            packed = new PackedNumbers(page, from + Integer.BYTES, 1);
        } else if (encoding != Encoding.PLAIN || type != PrimitiveTypeName.DOUBLE) {
            others = encoding.getValuesReader(column, ValuesType.VALUES);
            others.initFromPage(
                    count,
                    ByteBufferInputStream.wrap(
                            ByteBuffer.wrap(page, from, page.length - from - PackedNumbers.PADDING)));
        }
    }

    private IOException notRead(Encoding encoding) {
        return new IOException(
                "column " + column.getPath()[0] + " tells empty cells by " + encoding + ", which is not read here");
    }
}
