package org.tableweather.schema.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;

/** Rows and shots for the tests. */
final class Paths {

    static final double NAN = Double.NaN;

    private Paths() {}

    static Contact metres(int seq, Contact.Point point, Rail rail, double x, double y, double t) {
        return new Contact("s", "1", seq, point, Optional.ofNullable(rail), NAN, NAN, x, y, t);
    }

    static Contact diamonds(int seq, Contact.Point point, Rail rail, double x, double y) {
        return new Contact("s", "1", seq, point, Optional.ofNullable(rail), x, y, NAN, NAN, NAN);
    }

    /** Start, rails and rest of a mirror path, marked without error. */
    static List<Contact> marksOf(MirrorPath.Found path) {
        List<Contact> contacts = new ArrayList<>();
        int last = path.points().size() - 1;
        for (int i = 0; i <= last; i++) {
            Contact.Point point = i == 0 ? Contact.Point.START : i == last ? Contact.Point.REST : Contact.Point.RAIL;
            Rail rail = point == Contact.Point.RAIL ? path.rails().get(i - 1) : null;
            contacts.add(metres(
                    i + 1,
                    point,
                    rail,
                    path.points().get(i).xM(),
                    path.points().get(i).yM(),
                    NAN));
        }
        return contacts;
    }

    static Shot shot(Shot.Position start, List<Rail> rails, Shot.Position target, Rail targetRail) {
        return new Shot(
                "test",
                Kind.KICK,
                Optional.empty(),
                Optional.ofNullable(start),
                Optional.empty(),
                rails,
                Optional.of(target),
                Optional.of(targetRail),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty());
    }

    static PathReduction.Reduced reduced(PathReduction reduction) {
        assertThat(reduction).isInstanceOf(PathReduction.Reduced.class);
        return (PathReduction.Reduced) reduction;
    }

    static PathReduction.Refused refused(PathReduction reduction) {
        assertThat(reduction).isInstanceOf(PathReduction.Refused.class);
        return (PathReduction.Refused) reduction;
    }
}
