package org.tableweather.analyzers.standard.physics;

/**
 * The frictions at nose and bed and the bed's push, per unit of nose impulse, for given slips.
 *
 * <p>The slips change by {@code 7/2 f₁ + (1 − 5/2 s) g₁} and {@code 7/2 f₂ + (5/2 − s) g₂ + cN} at the nose, by
 * {@code 7/2 g₁ + (1 − 5/2 s) f₁} and {@code 7/2 g₂ + (5/2 − s) f₂ − c} at the bed, with {@code N = s − c f₂}: setting them to
 * nought gives what a contact needs to stick.
 */
final class NoseForces {

    private static final double SELF = 3.5;

    private final double noseFriction;
    private final double bedFriction;
    private final double sine;
    private final double cosine;
    private final double crossAlong;
    private final double crossInto;
    private boolean noseSlips;
    private double noseDirX;
    private double noseDirY;
    private boolean bedSlips;
    private double bedDirX;
    private double bedDirY;

    /** f₁. */
    double noseAlong;
    /** f₂. */
    double noseUp;
    /** g₁. */
    double bedAlong;
    /** g₂. */
    double bedInto;
    /** N; 0 when the ball is off the bed. */
    double push;

    NoseForces(double noseFriction, double bedFriction, double sine, double cosine) {
        this.noseFriction = noseFriction;
        this.bedFriction = bedFriction;
        this.sine = sine;
        this.cosine = cosine;
        crossAlong = 1 - 2.5 * sine;
        crossInto = 2.5 - sine;
    }

    /** The slip at the nose: friction's direction, if it slips. */
    void onNose(double x, double y, boolean slips) {
        double speed = Math.sqrt(x * x + y * y);
        noseSlips = slips && speed > 0;
        noseDirX = noseSlips ? -x / speed : 0;
        noseDirY = noseSlips ? -y / speed : 0;
    }

    /** The slip on the bed. */
    void onBed(double x, double y, boolean slips) {
        double speed = Math.sqrt(x * x + y * y);
        bedSlips = slips && speed > 0;
        bedDirX = bedSlips ? -x / speed : 0;
        bedDirY = bedSlips ? -y / speed : 0;
    }

    /**
     * Finds them for these slips.
     *
     * @param onBed whether the ball is down
     */
    void find(boolean onBed) {
        if (noseSlips) {
            noseAlong = noseFriction * noseDirX;
            noseUp = noseFriction * noseDirY;
            besideNose(onBed);
            return;
        }
        stick(onBed);
        double needed = Math.sqrt(noseAlong * noseAlong + noseUp * noseUp);
        if (needed > noseFriction) {
            noseAlong *= noseFriction / needed;
            noseUp *= noseFriction / needed;
            besideNose(onBed);
        }
    }

    /** The bed's share when the nose's friction is known. */
    private void besideNose(boolean onBed) {
        push = onBed ? Math.max(0, sine - cosine * noseUp) : 0;
        if (bedSlips) {
            bedAlong = bedFriction * push * bedDirX;
            bedInto = bedFriction * push * bedDirY;
            return;
        }
        bedAlong = -crossAlong * noseAlong / SELF;
        bedInto = (cosine - crossInto * noseUp) / SELF;
        holdBed();
    }

    private void holdBed() {
        double needed = Math.sqrt(bedAlong * bedAlong + bedInto * bedInto);
        double most = bedFriction * push;
        if (needed > most) {
            bedAlong *= most / needed;
            bedInto *= most / needed;
        }
    }

    /** What keeps the nose from slipping. */
    private void stick(boolean onBed) {
        if (!onBed) {
            noseAlong = 0;
            noseUp = 0;
            besideNose(false);
            return;
        }
        if (bedSlips) {
            stickOnSlippingBed(bedDirX, bedDirY);
            return;
        }
        double determinant = (SELF - cosine * cosine) * SELF - crossInto * crossInto;
        noseAlong = 0;
        noseUp = -(sine * SELF + crossInto) * cosine / determinant;
        push = sine - cosine * noseUp;
        bedAlong = 0;
        bedInto = ((SELF - cosine * cosine) + crossInto * sine) * cosine / determinant;
        double needed = Math.abs(bedInto);
        holdBed();
        if (Math.abs(bedInto) < needed) {
            stickOnSlippingBed(0, Math.signum(bedInto));
        }
    }

    private void stickOnSlippingBed(double dirX, double dirY) {
        double turned = cosine + crossInto * bedFriction * dirY;
        noseUp = -sine * turned / (SELF - cosine * turned);
        push = Math.max(0, sine - cosine * noseUp);
        bedAlong = bedFriction * push * dirX;
        bedInto = bedFriction * push * dirY;
        noseAlong = -crossAlong * bedAlong / SELF;
    }
}
