/** Finds analyzers, runs them over folders or kept summaries, and renders their answers as JSON, text and charts. */
package org.tableweather.analyzers.host;
