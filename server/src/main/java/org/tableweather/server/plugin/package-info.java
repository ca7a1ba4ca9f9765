/**
 * Analyzers that the operator added: jars in the plugin folder, each pinned by its SHA-256. They run in processes of their
 * own; whatever a jar is or does, the server starts and stays.
 */
package org.tableweather.server.plugin;
