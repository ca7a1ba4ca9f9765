/**
 * Pages that explain: how to contribute, the checks and their sources, the format's fields, cautions. They know no data.
 */
package org.tableweather.server.guide;
