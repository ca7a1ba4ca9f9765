/** The command {@code tableweather}. */
package org.tableweather.cli;
