/** Separated text as spreadsheets and loggers write it: separators, decimal marks, byte-order marks, numbers, times. */
package org.tableweather.schema.csv;
