/**
 * Releases: freezes what is accepted into numbered folders of Parquet files that can be fetched, verified and read without
 * this server, and answers analyses about exactly what a release holds.
 */
package org.tableweather.server.release;
