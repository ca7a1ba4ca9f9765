/** Hygrometer logs as loggers write them, turned into {@code climate.csv}. */
package org.tableweather.schema.logger;
