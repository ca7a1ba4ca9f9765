/** The contribution folder and its zip archive: reading, checking on the way, and writing. */
package org.tableweather.schema.folder;
