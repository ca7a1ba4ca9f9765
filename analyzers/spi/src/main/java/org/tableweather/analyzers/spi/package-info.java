/**
 * The plugin interface: an {@link org.tableweather.analyzers.spi.Analyzer} summarises each session once, then concludes
 * over the summaries. A third party depends on this module alone.
 */
package org.tableweather.analyzers.spi;
