/** Names for bytes by their content. */
package org.tableweather.schema.digest;
