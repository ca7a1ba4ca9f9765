/**
 * The door for analyzers from outside. A jar is read once, into a class loader that shows it the SPI, the schema and the
 * JDK alone ({@link org.tableweather.analyzers.host.plugin.PluginJar}). A host that must outlive whatever the jar does asks
 * it through a process of its own, with bounds of time and memory
 * ({@link org.tableweather.analyzers.host.plugin.IsolatedPlugin}).
 */
package org.tableweather.analyzers.host.plugin;
