package org.tableweather.schema.geometry;

import static org.tableweather.schema.geometry.PathRules.refused;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.tableweather.schema.geometry.PathReduction.Reason;
import org.tableweather.schema.geometry.PathReduction.Refused;
import org.tableweather.schema.record.Contact;

/** Rows of {@code contacts.csv} as marks in metres, in the order of their numbers. */
final class ContactMarks {

    private final TableSize table;
    private final double toleranceM;

    ContactMarks(TableSize table, MarkingError error) {
        this.table = table;
        this.toleranceM = error.toleranceM(table);
    }

    Optional<Refused> fault(List<Contact> contacts) {
        for (Contact contact : contacts) {
            if (!inDiamonds(contact) && !inMetres(contact)) {
                return refused(
                        Reason.NO_POSITION,
                        contact.seq(),
                        "no position",
                        "x_dia and y_dia, or x_m and y_m",
                        "mark the ball's centre in one of the two units");
            }
            if (inDiamonds(contact) && inMetres(contact) && apartM(contact) > toleranceM) {
                return refused(
                        Reason.TWO_POSITIONS,
                        contact.seq(),
                        String.format(Locale.ROOT, "%.1f mm apart", apartM(contact) * 1000),
                        String.format(Locale.ROOT, "at most %.1f mm", toleranceM * 1000),
                        "give diamonds or metres, or correct the table's playing length and width");
            }
        }
        return Optional.empty();
    }

    List<Mark> marks(List<Contact> contacts) {
        List<Mark> marks = new ArrayList<>();
        for (Contact contact : contacts) {
            TablePoint at = inDiamonds(contact) ? byDiamonds(contact) : byMetres(contact);
            marks.add(new Mark(contact.seq(), contact.point(), contact.rail(), at, contact.timeS()));
        }
        marks.sort(Comparator.comparingInt(Mark::seq));
        return marks;
    }

    private double apartM(Contact contact) {
        return byDiamonds(contact).distanceM(byMetres(contact));
    }

    private TablePoint byDiamonds(Contact contact) {
        return table.point(contact.xDia(), contact.yDia());
    }

    private static TablePoint byMetres(Contact contact) {
        return new TablePoint(contact.xM(), contact.yM());
    }

    private static boolean inDiamonds(Contact contact) {
        return Double.isFinite(contact.xDia()) && Double.isFinite(contact.yDia());
    }

    private static boolean inMetres(Contact contact) {
        return Double.isFinite(contact.xM()) && Double.isFinite(contact.yM());
    }
}
