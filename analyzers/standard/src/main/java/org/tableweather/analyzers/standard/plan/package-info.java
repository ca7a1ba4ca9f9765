/**
 * Planning a study: how sure it can be, and in which order to run it. The climate is hard to change, so it is set for a whole session
 * and drawn by lot once for each visit; shots are drawn by lot within a session: a split-plot design.
 *
 * @source Kirk2013
 */
package org.tableweather.analyzers.standard.plan;
