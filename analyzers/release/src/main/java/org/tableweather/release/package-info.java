/**
 * Frozen, numbered releases of accepted contributions: Parquet tables, a manifest with the hash of every file, and metadata
 * for citing them. Written, verified and read without a server.
 */
package org.tableweather.release;
