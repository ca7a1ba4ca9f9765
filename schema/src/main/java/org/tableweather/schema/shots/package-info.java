/** The built-in catalogue of diagnostic shots, defined in diamonds so that they fit a table of any size. */
package org.tableweather.schema.shots;
