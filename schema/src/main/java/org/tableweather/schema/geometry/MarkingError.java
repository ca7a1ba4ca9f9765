package org.tableweather.schema.geometry;

/**
 * How well points and times are marked.
 *
 * <p>A scale read to the nearest step δ carries a standard uncertainty of {@code δ/√12}.
 *
 * @param pointM standard uncertainty of each coordinate of a mark, m, ≥ 0
 * @param timeS standard uncertainty of each time, s, ≥ 0
 * @source JCGM100
 */
public record MarkingError(double pointM, double timeS) {

    /** Reading by eye to a tenth of a diamond: common practice, no source. */
    public static final double BY_EYE_STEP_DIA = 0.1;

    /** Frames a second of an ordinary camera, a time being that of the nearest frame: common practice, no source. */
    public static final double FRAMES_PER_SECOND = 60;

    private static final double TOLERANCE_IN_STANDARD_UNCERTAINTIES = 3;
    private static final double LEAST_TOLERANCE_M = 0.005;
    private static final double GREATEST_TOLERANCE_IN_RADII = 0.9;

    public MarkingError {
        if (!(pointM >= 0 && timeS >= 0)) {
            throw new IllegalArgumentException("a marking error must be >= 0, got " + pointM + " m, " + timeS + " s");
        }
    }

    /**
     * The default: points read by eye to {@link #BY_EYE_STEP_DIA}, times to a frame.
     *
     * @param table whose diamonds
     */
    public static MarkingError byEye(TableSize table) {
        return readTo(BY_EYE_STEP_DIA * table.diamondAlongM(), 1 / FRAMES_PER_SECOND);
    }

    /**
     * Marks read to the nearest step of a scale.
     *
     * @param stepM step of the scale, m
     * @param stepS step of the clock, s
     */
    public static MarkingError readTo(double stepM, double stepS) {
        return new MarkingError(stepM / Math.sqrt(12), stepS / Math.sqrt(12));
    }

    /**
     * How far a mark may be from where it must be: three standard uncertainties, but at least 5 mm (the cushion gives way;
     * common practice, no source) and at most nine tenths of a ball radius, so that a contact marked on the nose line
     * instead of at the ball's centre is always noticed.
     *
     * @param table whose ball
     * @return m
     */
    public double toleranceM(TableSize table) {
        double byError = TOLERANCE_IN_STANDARD_UNCERTAINTIES * pointM;
        return Math.max(LEAST_TOLERANCE_M, Math.min(byError, GREATEST_TOLERANCE_IN_RADII * table.ballRadiusM()));
    }
}
