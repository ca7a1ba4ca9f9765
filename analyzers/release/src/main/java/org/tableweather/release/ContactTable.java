package org.tableweather.release;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.tableweather.schema.dictionary.Field;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.table.ContactColumn;

/** The columns of a table of marked points: those of {@code contacts.csv} by their names there, and what names the session. */
final class ContactTable {
    private static final Map<String, Field> FIELDS = TrialTable.fields("contacts.csv");

    static final ParquetTable<ContactRow> TABLE = new ParquetTable<>("contacts", columns());

    private ContactTable() {}

    private static List<TableColumn<ContactRow>> columns() {
        return List.of(
                key(TrialTable.ROOM_KEY, "the room over all contributions", SpilledSession::roomKey),
                key(TrialTable.SESSION_KEY, "the session over all contributions", SpilledSession::sessionKey),
                key(
                        TrialTable.SESSION_DIGEST,
                        "SHA-256 of the session and its trials, hex: names its content",
                        SpilledSession::digest),
                text(ContactColumn.TRIAL, Contact::trial).always(),
                TableColumn.<ContactRow>count(
                                ContactColumn.SEQ.header(),
                                ContactColumn.SEQ.unit(),
                                words(ContactColumn.SEQ),
                                row -> row.contact().seq())
                        .always(),
                text(ContactColumn.POINT, contact -> contact.point().name().toLowerCase(Locale.ROOT))
                        .always(),
                text(
                        ContactColumn.RAIL,
                        contact -> contact.rail().map(Rail::schemaName).orElse("")),
                number(ContactColumn.X_DIA, Contact::xDia),
                number(ContactColumn.Y_DIA, Contact::yDia),
                number(ContactColumn.X_M, Contact::xM),
                number(ContactColumn.Y_M, Contact::yM),
                number(ContactColumn.X_PX, Contact::xPx),
                number(ContactColumn.Y_PX, Contact::yPx),
                text(ContactColumn.CAMERA, Contact::camera),
                number(ContactColumn.T_S, Contact::timeS));
    }

    private static String words(ContactColumn column) {
        return FIELDS.get(column.header()).description();
    }

    private static TableColumn<ContactRow> key(
            String name, String description, Function<SpilledSession, String> value) {
        return TableColumn.<ContactRow>text(name, description, row -> value.apply(row.session()))
                .always();
    }

    private static TableColumn<ContactRow> text(ContactColumn column, Function<Contact, String> value) {
        return TableColumn.text(column.header(), words(column), row -> value.apply(row.contact()));
    }

    private static TableColumn<ContactRow> number(ContactColumn column, ToDoubleFunction<Contact> value) {
        return TableColumn.number(
                column.header(), column.unit(), words(column), row -> value.applyAsDouble(row.contact()));
    }
}
