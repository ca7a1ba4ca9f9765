package org.tableweather.analyzers.standard.statistics.spread;

/** How far a ball's centre goes when players count table lengths. */
public final class CentreTravel {

    private CentreTravel() {}

    /**
     * {@code lengths · (playing length − diameter)}: the centre turns one radius before either nose. On a bed of 100 in with
     * balls of 2.25 in a length is 97.75 in; taking 100 in makes the cloth seem 2.3 % faster.
     *
     * @param lengths at least 0
     * @param playingLengthM nose to nose, m
     * @param ballDiameterM m, below the playing length
     * @throws IllegalArgumentException outside the bounds
     */
    public static double metres(double lengths, double playingLengthM, double ballDiameterM) {
        if (!(lengths >= 0 && ballDiameterM > 0 && playingLengthM > ballDiameterM)) {
            throw new IllegalArgumentException(
                    "centre travel needs lengths >= 0 and 0 < diameter < playing length, got " + lengths + ", "
                            + ballDiameterM + " and " + playingLengthM);
        }
        return lengths * (playingLengthM - ballDiameterM);
    }
}
