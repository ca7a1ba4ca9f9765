package org.tableweather.schema.equipment;

import java.util.Optional;
import org.tableweather.schema.geometry.PocketMouths;
import org.tableweather.schema.geometry.TableSize;

/**
 * A size of table, with the balls that are played on it.
 *
 * @param id {@code pool-9ft}, {@code carom} ...
 * @param name in words
 * @param playingLengthMm nose to nose along, mm
 * @param playingWidthMm nose to nose across, mm
 * @param ballDiameterMm mm
 * @param ballMassG g
 * @param noseHeightMm height of the nose over the bed, mm
 * @param noseHeightPct the same in % of the ball's diameter
 * @param cornerMouthMm mouth of a corner pocket, nose to nose, mm
 * @param sideMouthMm mouth of a side pocket, nose to nose, mm
 * @param sightToNoseMm centre of a sight to the nose, mm
 */
public record PublishedTable(
        String id,
        String name,
        Specified playingLengthMm,
        Specified playingWidthMm,
        Specified ballDiameterMm,
        Optional<Specified> ballMassG,
        Optional<Specified> noseHeightMm,
        Optional<Specified> noseHeightPct,
        Optional<Specified> cornerMouthMm,
        Optional<Specified> sideMouthMm,
        Optional<Specified> sightToNoseMm) {

    /** The nominal size. */
    public TableSize size() {
        return new TableSize(
                metres(playingLengthMm.nominal().orElseThrow()),
                metres(playingWidthMm.nominal().orElseThrow()),
                metres(ballDiameterMm.nominal().orElseThrow()));
    }

    /** The widest pocket mouths allowed; {@link PocketMouths#NONE} where no figure is published. */
    public PocketMouths pockets() {
        if (cornerMouthMm.isEmpty() || sideMouthMm.isEmpty()) {
            return PocketMouths.NONE;
        }
        return new PocketMouths(
                metres(cornerMouthMm.get().upper().orElseThrow()),
                metres(sideMouthMm.get().upper().orElseThrow()));
    }

    private static double metres(double mm) {
        return mm / 1000;
    }
}
