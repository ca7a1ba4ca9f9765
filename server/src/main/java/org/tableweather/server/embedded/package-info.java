/**
 * The database of a server that was given none: the real PostgreSQL, from Maven artifacts, in the data folder.
 *
 * <p>The launcher was made for tests; what it switches off (fsync, synchronous_commit) is switched on here, its trust in
 * every local connection replaced by a generated password, and a test asks the running server for both. It listens on
 * 127.0.0.1 alone. A database left over by a killed server is ended before the next start.
 */
package org.tableweather.server.embedded;
