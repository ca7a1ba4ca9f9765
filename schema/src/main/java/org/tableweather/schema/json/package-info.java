/** The JSON of the schema's records: one mapper for all, and a reader that reports everything that is wrong. */
package org.tableweather.schema.json;
