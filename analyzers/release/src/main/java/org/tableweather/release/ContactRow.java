package org.tableweather.release;

import org.tableweather.schema.record.Contact;

/**
 * A marked point as a row of its table.
 *
 * @param session it belongs to
 * @param contact as written
 */
record ContactRow(SpilledSession session, Contact contact) {}
