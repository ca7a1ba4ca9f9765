package org.tableweather.analyzers.standard.physics;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.physics.BallPath.Ending;
import org.tableweather.schema.record.Rail;

/** One ball on its way: the state between two events, and the books. */
final class RunningBall {

    private static final int MOST_EVENTS = 10_000;
    /** A contact slower than this ends motion across the rail: a ball held against a rail would bounce without end. */
    private static final double HELD_MPS = 1e-3;

    private final BallRun run;
    private final BallState start;
    private final int contactsWanted;
    private final double secondsWanted;
    private final List<PathEvent> events = new ArrayList<>();
    private BallState state;
    private double timeS;
    private int contacts;
    private double slidingJ;
    private double rollingJ;
    private double spinJ;
    private double railJ;

    RunningBall(BallRun run, BallState start, int contactsWanted, double secondsWanted) {
        this.run = run;
        this.start = start;
        this.state = start;
        this.contactsWanted = contactsWanted;
        this.secondsWanted = secondsWanted;
    }

    BallPath run() {
        while (events.size() < MOST_EVENTS) {
            Leg leg = Leg.from(state, run.cloth(), run.ball());
            if (leg.phase() == Phase.RESTING) {
                return path(Ending.AT_REST);
            }
            RailMeeting meeting = RailMeeting.first(leg, run.table());
            double nextS = Math.min(leg.durationS(), meeting.timeS());
            if (timeS + nextS > secondsWanted) {
                double left = secondsWanted - timeS;
                book(leg, left);
                state = leg.after(left);
                timeS = secondsWanted;
                return path(Ending.TIME_OVER);
            }
            if (nextS == Double.POSITIVE_INFINITY) {
                return path(Ending.NOTHING_MORE);
            }
            advance(leg, meeting, nextS);
            if (contacts == contactsWanted) {
                return path(Ending.RAILS_TOUCHED);
            }
        }
        return path(Ending.TOO_MANY_EVENTS);
    }

    private void advance(Leg leg, RailMeeting meeting, double nextS) {
        book(leg, nextS);
        timeS += nextS;
        if (meeting.timeS() <= leg.durationS()) {
            touch(meeting.rail(), leg.after(nextS));
            return;
        }
        state = leg.end();
        PathEvent.Kind kind = leg.endsSpin()
                ? PathEvent.Kind.SPIN_ENDS
                : leg.phase() == Phase.SLIDING ? PathEvent.Kind.SLIDE_ENDS : PathEvent.Kind.ROLL_ENDS;
        events.add(new PathEvent(kind, timeS, Optional.empty(), leg.after(nextS), state));
    }

    private void touch(Rail rail, BallState arriving) {
        BallState held = RailMeeting.held(rail, arriving, run.table());
        RailAxes axes = RailAxes.of(rail);
        RailMotion before = axes.motion(held);
        RailMotion after =
                before.intoMps() < HELD_MPS ? along(before) : run.rails().after(before);
        state = axes.state(held, after);
        railJ += run.ball().energyJ(held) - run.ball().energyJ(state);
        contacts++;
        events.add(new PathEvent(PathEvent.Kind.RAIL, timeS, Optional.of(rail), held, state));
    }

    private static RailMotion along(RailMotion before) {
        return new RailMotion(before.alongMps(), 0, 0, 0, before.spinIntoMps(), before.spinUpMps());
    }

    private void book(Leg leg, double seconds) {
        slidingJ += leg.slidingWorkJ(seconds, run.ball());
        rollingJ += leg.rollingWorkJ(seconds, run.ball());
        spinJ += leg.spinWorkJ(seconds, run.ball());
    }

    private BallPath path(Ending ending) {
        EnergyBook book = new EnergyBook(
                run.ball().energyJ(start),
                slidingJ,
                rollingJ,
                spinJ,
                railJ,
                run.ball().energyJ(state));
        return new BallPath(start, events, state, timeS, ending, book);
    }
}
