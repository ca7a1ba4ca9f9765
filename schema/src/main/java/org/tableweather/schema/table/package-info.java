/** The columns of the CSV files: names, units, bounds; the one place from which reader, writer and descriptions agree. */
package org.tableweather.schema.table;
