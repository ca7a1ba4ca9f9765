/** Mathematics without rooms, sessions or trials. */
package org.tableweather.analyzers.standard.numeric;
