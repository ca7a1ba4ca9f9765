/**
 * The analyzers of roll-out, break, throw, deflection and hop: each states its measure, one engine pools it over rooms by the
 * nested model of sessions in rooms.
 */
package org.tableweather.analyzers.standard.catalogue.kind;
