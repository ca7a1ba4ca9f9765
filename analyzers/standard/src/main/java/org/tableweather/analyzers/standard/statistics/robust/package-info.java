/**
 * The answer that trusts no variance model: least squares over trials with a covariance that only takes rooms as
 * independent, from each room's moments.
 */
package org.tableweather.analyzers.standard.statistics.robust;
