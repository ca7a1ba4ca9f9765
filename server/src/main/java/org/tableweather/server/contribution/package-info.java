/**
 * Archives on their way into the catalogue: received, checked, accepted or refused, withdrawn.
 *
 * <p>An archive is streamed to a file, synced, and moved to its place; then one transaction records that it was received,
 * and a second one reads it once, checks it, and stores every row or none. Whatever is cut short is either absent or
 * {@code received}, and a server that starts goes on with what was received. The archive's SHA-256 is its identity, so
 * sending again is always safe.
 */
package org.tableweather.server.contribution;
