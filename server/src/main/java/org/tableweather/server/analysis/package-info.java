/**
 * Analyses of what is published: each session is summarised once per analyzer and kept, so that an analysis costs what is
 * new and the fit. Also the first page, which shows the pooled curve.
 */
package org.tableweather.server.analysis;
