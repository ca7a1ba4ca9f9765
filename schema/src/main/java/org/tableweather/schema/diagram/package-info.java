/** Drawings of the table as SVG text: the same input gives the same bytes. */
package org.tableweather.schema.diagram;
