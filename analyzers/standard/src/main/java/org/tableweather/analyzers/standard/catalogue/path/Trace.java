package org.tableweather.analyzers.standard.catalogue.path;

import java.util.List;
import org.tableweather.analyzers.standard.physics.BallPath;
import org.tableweather.analyzers.standard.physics.BallRun;
import org.tableweather.analyzers.standard.physics.BallState;
import org.tableweather.analyzers.standard.physics.ClothFriction;
import org.tableweather.analyzers.standard.physics.PathEvent;
import org.tableweather.analyzers.standard.physics.RailImpact;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.record.Rail;

/**
 * A ball's way as it comes.
 *
 * @param path up to the landing, or until something else ends it
 * @param landing where the ball, or its last leg drawn on, meets the line of the target rail; only when it {@code lands}
 * @param landingDia the same from the target; NaN when it does not land
 */
record Trace(BallPath path, TablePoint landing, double landingDia) {

    private static final TablePoint NOWHERE = new TablePoint(Double.NaN, Double.NaN);

    /** Follows a ball. */
    static Trace of(Pattern pattern, ClothFriction cloth, RailImpact rails) {
        int count = pattern.rails().size();
        BallPath path =
                new BallRun(pattern.table(), pattern.ballOf(), cloth, rails).toRails(pattern.ball(cloth), count + 1);
        List<PathEvent> contacts = path.contacts();
        if (contacts.size() <= count || !inOrder(contacts, pattern.rails())) {
            return new Trace(path, NOWHERE, Double.NaN);
        }
        TablePoint landing = drawnOn(pattern, contacts.get(count));
        return new Trace(path, landing, Double.isNaN(landing.xM()) ? Double.NaN : pattern.offsetDia(landing));
    }

    private static boolean inOrder(List<PathEvent> contacts, List<Rail> rails) {
        for (int i = 0; i < rails.size(); i++) {
            if (contacts.get(i).rail().orElseThrow() != rails.get(i)) {
                return false;
            }
        }
        return true;
    }

    // a ball that meets another rail just before the target's is read where its line goes on to
    private static TablePoint drawnOn(Pattern pattern, PathEvent last) {
        BallState ball = last.before();
        if (last.rail().orElseThrow() == pattern.targetRail()) {
            return ball.place();
        }
        boolean isShort = Pattern.isShort(pattern.targetRail());
        double line = pattern.table().lineM(pattern.targetRail());
        double away = line - (isShort ? ball.xM() : ball.yM());
        double speed = isShort ? ball.vxMps() : ball.vyMps();
        if (!(away * speed > 0)) {
            return NOWHERE;
        }
        double seconds = away / speed;
        return isShort
                ? new TablePoint(line, ball.yM() + seconds * ball.vyMps())
                : new TablePoint(ball.xM() + seconds * ball.vxMps(), line);
    }

    boolean lands() {
        return !Double.isNaN(landingDia);
    }

    /** What the ball did instead, in words. */
    String instead() {
        List<String> met = path.rails().stream().map(Rail::schemaName).toList();
        String rails = met.isEmpty() ? "no rail" : "the rails " + String.join(", ", met);
        return path.ending() == BallPath.Ending.AT_REST
                ? "the ball comes to rest after " + rails
                : "the ball meets " + rails;
    }
}
