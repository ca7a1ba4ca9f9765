package org.tableweather.schema.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;

/**
 * From the marked points of one trial to angles, speeds, landing and length, each with its standard uncertainty.
 *
 * <p>Angles are those of straight legs between marks, from the normal of the rail. A rail contact is held to the line where
 * a ball touches that rail, one ball radius inside its nose; what the mark says across the rail only decides whether it is
 * believed. Uncertainties come from the marking error by the law of propagation, to first order.
 *
 * <p>Marks stop where the shot ends: at the landing on the target rail, at the ball that is hit, or at rest. With a shot,
 * contacts after its last rail are the landing and what follows, and do not count as rails of the path.
 *
 * @source JCGM100
 */
public final class PathReducer {

    private final TableSize table;
    private final MarkingError error;

    /**
     * For one table.
     *
     * @param table its size and ball
     * @param error of the marks; {@link MarkingError#byEye} when nothing is known
     */
    public PathReducer(TableSize table, MarkingError error) {
        this.table = table;
        this.error = error;
    }

    /**
     * A path without a shot: every rail counts, and nothing is said of a landing.
     *
     * @param contacts the rows of one trial, in any order
     */
    public PathReduction reduce(List<Contact> contacts) {
        return reduce(contacts, Optional.empty());
    }

    /**
     * A path of a shot.
     *
     * @param contacts the rows of one trial, in any order
     * @param shot what was attempted
     */
    public PathReduction reduce(List<Contact> contacts, Shot shot) {
        return reduce(contacts, Optional.of(shot));
    }

    /**
     * A path whose marks have errors of their own, such as marks on a video frame.
     *
     * @param path in metres
     * @param shot what was attempted; empty when every rail counts
     */
    public PathReduction reduce(MarkedPath path, Optional<Shot> shot) {
        PathRules rules = new PathRules(table, path.toleranceM());
        Optional<PathReduction.Refused> fault = rules.fault(path.marks());
        if (fault.isPresent()) {
            return fault.get();
        }
        List<Mark> held = path.marks().stream()
                .map(mark -> mark.movedTo(rules.place(mark)))
                .toList();
        return reduced(path, path.withMarks(held), shot);
    }

    private PathReduction reduce(List<Contact> contacts, Optional<Shot> shot) {
        ContactMarks rows = new ContactMarks(table, error);
        Optional<PathReduction.Refused> fault = rows.fault(contacts);
        if (fault.isPresent()) {
            return fault.get();
        }
        return reduce(MarkedPath.of(rows.marks(contacts), error, table), shot);
    }

    private PathReduction.Reduced reduced(MarkedPath marked, MarkedPath held, Optional<Shot> shot) {
        LegFigures figures = new LegFigures(held);
        List<Integer> contacts = railContacts(held.marks());
        List<RailTouch> touches = new ArrayList<>();
        for (int contact : contacts) {
            touches.add(touch(figures, marked, held, contact));
        }
        boolean follows = shot.isPresent() && follows(touches, shot.get().rails());
        int counted = follows ? shot.get().rails().size() : touches.size();
        Optional<Measured> last = counted == 0 || (shot.isPresent() && !follows)
                ? Optional.empty()
                : touches.get(counted - 1).reboundAngleDeg();
        Optional<Landing> landing = follows
                ? landing(figures, held, counted == 0 ? 0 : contacts.get(counted - 1), shot.get())
                : Optional.empty();
        int end = held.marks().size() - 1;
        return new PathReduction.Reduced(touches, counted, follows, last, landing, figures.lengthM(0, end));
    }

    private RailTouch touch(LegFigures figures, MarkedPath marked, MarkedPath held, int contact) {
        Mark mark = held.marks().get(contact);
        Rail rail = mark.rail().orElseThrow();
        RailFrame frame = new RailFrame(rail);
        double off = frame.across(mark.at())
                - frame.across(marked.marks().get(contact).at());
        boolean before = contact > 0;
        boolean after = contact < held.marks().size() - 1;
        int travel = before ? figures.travel(contact - 1, rail) : 0;
        return new RailTouch(
                mark.seq(),
                rail,
                mark.at(),
                frame.inward() * off,
                travel,
                before ? Optional.of(figures.approachDeg(contact, rail)) : Optional.empty(),
                after ? Optional.of(figures.reboundDeg(contact, rail, travel)) : Optional.empty(),
                before ? figures.speedMps(contact - 1) : Optional.empty(),
                after ? figures.speedMps(contact) : Optional.empty());
    }

    private Optional<Landing> landing(LegFigures figures, MarkedPath held, int from, Shot shot) {
        Optional<LandingLine> line = LandingLine.of(shot, table);
        Optional<Mark> next = held.mark(from + 1);
        if (line.isEmpty() || next.isEmpty()) {
            return Optional.empty();
        }
        boolean anotherRail = next.get().isRail()
                && next.get().rail().orElseThrow() != line.get().rail();
        return anotherRail ? Optional.empty() : figures.landing(from, line.get(), table);
    }

    private static List<Integer> railContacts(List<Mark> marks) {
        List<Integer> contacts = new ArrayList<>();
        for (int i = 0; i < marks.size(); i++) {
            if (marks.get(i).isRail()) {
                contacts.add(i);
            }
        }
        return contacts;
    }

    private static boolean follows(List<RailTouch> touches, List<Rail> rails) {
        return touches.size() >= rails.size()
                && touches.stream()
                        .limit(rails.size())
                        .map(RailTouch::rail)
                        .toList()
                        .equals(rails);
    }
}
