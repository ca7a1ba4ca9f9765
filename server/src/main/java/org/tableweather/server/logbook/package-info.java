/**
 * The page for logging attempts beside the table: it works offline and keeps everything on the device until it is handed
 * over. Knows the schema and no data.
 */
package org.tableweather.server.logbook;
