/** How long cloth and cushions take to settle in a new climate. */
package org.tableweather.analyzers.standard.catalogue.settling;
