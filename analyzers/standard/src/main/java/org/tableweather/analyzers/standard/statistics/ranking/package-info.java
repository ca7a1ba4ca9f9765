/** Which place does one of several uncertain values take among them? */
package org.tableweather.analyzers.standard.statistics.ranking;
