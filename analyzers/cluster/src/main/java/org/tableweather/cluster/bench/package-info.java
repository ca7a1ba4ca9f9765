/** What only benchmarks need: data made up at any size, and partitions read more than once. */
package org.tableweather.cluster.bench;
