/** Small dense matrices, as the estimators need them. */
package org.tableweather.analyzers.standard.statistics.algebra;
