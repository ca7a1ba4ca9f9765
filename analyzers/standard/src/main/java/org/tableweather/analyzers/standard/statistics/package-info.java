/**
 * Estimators on numbers: moments that merge, linear regression and the nested mixed model that are computed from them.
 */
package org.tableweather.analyzers.standard.statistics;
