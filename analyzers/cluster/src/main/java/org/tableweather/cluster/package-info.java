/**
 * Analyzers over a release on an Apache Spark cluster: executors read room groups and summarise their sessions, the driver
 * concludes over the summaries as every other host does.
 */
package org.tableweather.cluster;
