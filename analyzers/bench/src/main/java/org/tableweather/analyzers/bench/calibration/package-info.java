/** How often intervals hold what they should, in pools drawn from a stated truth. */
package org.tableweather.analyzers.bench.calibration;
