package org.tableweather.schema.geometry;

import java.util.Optional;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Rail;

/**
 * One point of a path, marked on a video frame.
 *
 * @param seq order along the path
 * @param point what happens there
 * @param rail which rail, for a rail contact
 * @param at ball's centre on the frame
 * @param timeS s; NaN when not known
 */
public record VideoMark(int seq, Contact.Point point, Optional<Rail> rail, PixelPoint at, double timeS) {}
