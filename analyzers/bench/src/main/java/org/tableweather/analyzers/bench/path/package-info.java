/** How long a ball's path takes to compute: {@code analyzers/bench/paths}. */
package org.tableweather.analyzers.bench.path;
