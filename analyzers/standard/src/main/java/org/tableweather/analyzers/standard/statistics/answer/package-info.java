/** What an estimator hands back: a value, or why there is none; and intervals. */
package org.tableweather.analyzers.standard.statistics.answer;
