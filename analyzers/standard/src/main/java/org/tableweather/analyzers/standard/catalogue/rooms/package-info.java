/** Analyzers of how rooms differ: slopes room by room, and one room beside the others. */
package org.tableweather.analyzers.standard.catalogue.rooms;
