/**
 * The folder that holds everything a server must not lose: the embedded database, the archives, uploads on their way in,
 * and files that only its owner may read. One server at a time holds its lock.
 */
package org.tableweather.server.datafolder;
