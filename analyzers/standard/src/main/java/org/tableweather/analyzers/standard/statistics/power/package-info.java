/** How likely is a planned study to see a change that is there? Power of split-plot tests by noncentral distributions. */
package org.tableweather.analyzers.standard.statistics.power;
