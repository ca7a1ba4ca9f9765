/** The server: starts its database, then the application, and writes down where it can be reached. */
package org.tableweather.server;
