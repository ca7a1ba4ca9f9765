/** Side-by-side benchmarks against peers; not part of a release. */
package org.tableweather.analyzers.bench;
