/** The statistics of pooled trials. */
package org.tableweather.analyzers.standard;
