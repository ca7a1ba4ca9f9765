/**
 * The geometry of the table: frames, marked paths, mirror images, video frames, test shots drawn.
 *
 * <p><b>Table frame.</b> x runs along the long rails from the nose of the head rail to the nose of the foot rail, 0..8
 * diamonds; y runs across from the nose of the near rail to the nose of the far rail, 0..4 diamonds. A diamond is an eighth
 * of the playing length along and a quarter of the playing width across; where the table is not exactly twice as long as
 * wide the two differ, and are kept apart.
 *
 * <p><b>Whose coordinates.</b> Every point is the ball's centre. A ball touches a rail when its centre is one ball radius
 * from the nose line, so centres move in a rectangle that is shorter and narrower than the playing area by one ball
 * diameter: 2482.85 mm × 1212.85 mm on a table of 2540 mm × 1270 mm with a ball of 57.15 mm.
 *
 * <p>The radius is a convention. The nose meets the ball above its centre, at the height h where sin θ = 2h/D − 1, so the
 * true stand-off is R·cos θ: at 63.5 % of the diameter 1.06 mm less than R = 28.575 mm. The cushion also gives way under a
 * fast ball. Both are far below what an eye can mark, and neither is corrected.
 *
 * <p><b>Angles</b> are taken from the rail's normal, in degrees, 0 straight out. All lengths inside are metres.
 *
 * <p>This package knows the records and the JDK, nothing else.
 */
package org.tableweather.schema.geometry;
