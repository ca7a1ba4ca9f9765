package org.tableweather.schema.record;

import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;

/**
 * One attempt: a row of {@code trials.csv}, with the climate it is taken to have felt.
 *
 * <p>Numbers are NaN (counts −1, texts empty) when not measured. Angles in degrees from the rail's normal, 0 straight out.
 *
 * @param session id of the session in the same contribution
 * @param trial id within the session; digits are ordered as numbers
 * @param startedAt when the ball was struck or released
 * @param kind what the trial tests
 * @param shot id of the shot definition
 * @param ball which ball or ball set, when it differs from the session's; empty when not stated
 * @param tempC own spot reading, °C
 * @param rhPct own spot reading, %
 * @param approachAngleDeg angle of arrival at the first rail, degrees from the normal
 * @param approachSpeedMps speed of arrival at the first rail, m/s
 * @param sideSpinRps spin about the vertical at the first rail, revolutions per second, positive counter-clockwise from above
 * @param rollRatio rolling spin over the spin of natural roll, 0 sliding, 1 rolling
 * @param tipOffsetMm sideways offset of the cue tip from the ball's centre, mm
 * @param reboundAngleDeg angle of departure from the first rail, degrees
 * @param reboundSpeedMps speed of departure from the first rail, m/s
 * @param finalReboundAngleDeg angle of departure from the last rail, degrees
 * @param landingOffsetDia signed distance along the target rail from the shot's target, diamonds, positive long
 * @param made made or missed
 * @param rails number of rails touched; −1 when not stated
 * @param runOutM distance rolled after the last contact, m
 * @param runOutLengths the same in table lengths
 * @param objectAngleDeg object ball's departure from the line of centres, degrees
 * @param deflectionAngleDeg cue ball's departure from the line of the cue, degrees
 * @param hopHeightMm height of the ball's lowest point over the cloth, mm
 * @param ballsMade balls made on a break; −1 when not stated
 * @param spreadNearestMm mean distance of each ball to its nearest neighbour after a break, mm
 * @param cueBallTravelM cue ball's path length after a break, m
 * @param note free text
 * @param climate which climate stands for this trial, and where it came from
 * @param uncertainty standard uncertainties of the above, as far as stated
 */
public record Trial(
        String session,
        String trial,
        Optional<Instant> startedAt,
        Kind kind,
        String shot,
        String ball,
        double tempC,
        double rhPct,
        double approachAngleDeg,
        double approachSpeedMps,
        double sideSpinRps,
        double rollRatio,
        double tipOffsetMm,
        double reboundAngleDeg,
        double reboundSpeedMps,
        double finalReboundAngleDeg,
        double landingOffsetDia,
        Made made,
        int rails,
        double runOutM,
        double runOutLengths,
        double objectAngleDeg,
        double deflectionAngleDeg,
        double hopHeightMm,
        int ballsMade,
        double spreadNearestMm,
        double cueBallTravelM,
        String note,
        Climate climate,
        OutcomeUncertainty uncertainty) {

    /** A trial of which no uncertainty is stated. */
    public Trial(
            String session,
            String trial,
            Optional<Instant> startedAt,
            Kind kind,
            String shot,
            String ball,
            double tempC,
            double rhPct,
            double approachAngleDeg,
            double approachSpeedMps,
            double sideSpinRps,
            double rollRatio,
            double tipOffsetMm,
            double reboundAngleDeg,
            double reboundSpeedMps,
            double finalReboundAngleDeg,
            double landingOffsetDia,
            Made made,
            int rails,
            double runOutM,
            double runOutLengths,
            double objectAngleDeg,
            double deflectionAngleDeg,
            double hopHeightMm,
            int ballsMade,
            double spreadNearestMm,
            double cueBallTravelM,
            String note,
            Climate climate) {
        this(
                session,
                trial,
                startedAt,
                kind,
                shot,
                ball,
                tempC,
                rhPct,
                approachAngleDeg,
                approachSpeedMps,
                sideSpinRps,
                rollRatio,
                tipOffsetMm,
                reboundAngleDeg,
                reboundSpeedMps,
                finalReboundAngleDeg,
                landingOffsetDia,
                made,
                rails,
                runOutM,
                runOutLengths,
                objectAngleDeg,
                deflectionAngleDeg,
                hopHeightMm,
                ballsMade,
                spreadNearestMm,
                cueBallTravelM,
                note,
                climate,
                OutcomeUncertainty.NONE);
    }

    /**
     * The order in which a session's trials are summarised and stored, whatever their order in the file: ids of digits
     * alone first, by value, then the rest by code unit.
     */
    public static final Comparator<Trial> CANONICAL_ORDER = (a, b) -> compareIds(a.trial, b.trial);

    /** The order of trial ids in {@link #CANONICAL_ORDER}. */
    public static final Comparator<String> ID_ORDER = Trial::compareIds;

    /**
     * The angle of departure from the last rail: the typed final angle, or, for a shot of one rail, its only rebound angle.
     *
     * @return degrees from the normal; NaN when not measured
     */
    public double lastReboundAngleDeg() {
        return Double.isNaN(finalReboundAngleDeg) && kind == Kind.REBOUND ? reboundAngleDeg : finalReboundAngleDeg;
    }

    /** The same trial in another climate: a corrected one. */
    public Trial withClimate(Climate other) {
        return new Trial(
                session,
                trial,
                startedAt,
                kind,
                shot,
                ball,
                tempC,
                rhPct,
                approachAngleDeg,
                approachSpeedMps,
                sideSpinRps,
                rollRatio,
                tipOffsetMm,
                reboundAngleDeg,
                reboundSpeedMps,
                finalReboundAngleDeg,
                landingOffsetDia,
                made,
                rails,
                runOutM,
                runOutLengths,
                objectAngleDeg,
                deflectionAngleDeg,
                hopHeightMm,
                ballsMade,
                spreadNearestMm,
                cueBallTravelM,
                note,
                other,
                uncertainty);
    }

    private static int compareIds(String a, String b) {
        boolean numericA = isDigits(a);
        boolean numericB = isDigits(b);
        if (numericA != numericB) {
            return numericA ? -1 : 1;
        }
        if (numericA) {
            int startA = firstSignificant(a);
            int startB = firstSignificant(b);
            int byLength = Integer.compare(a.length() - startA, b.length() - startB);
            int byValue = byLength != 0
                    ? byLength
                    : startA + startB == 0
                            ? a.compareTo(b)
                            : a.substring(startA).compareTo(b.substring(startB));
            if (byValue != 0) {
                return byValue;
            }
        }
        return a.compareTo(b);
    }

    private static boolean isDigits(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < '0' || text.charAt(i) > '9') {
                return false;
            }
        }
        return !text.isEmpty();
    }

    private static int firstSignificant(String digits) {
        int i = 0;
        while (i < digits.length() - 1 && digits.charAt(i) == '0') {
            i++;
        }
        return i;
    }
}
