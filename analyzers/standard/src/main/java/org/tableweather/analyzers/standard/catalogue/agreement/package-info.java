/** How well trials, sessions and rooms agree when the climate is nearly the same. */
package org.tableweather.analyzers.standard.catalogue.agreement;
