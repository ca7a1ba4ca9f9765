/** Sizes of tables and balls from published specifications, as data, each figure with its source and how sure we are. */
package org.tableweather.schema.equipment;
