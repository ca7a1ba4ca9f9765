/**
 * What was contributed, and what of it is published: rooms, tables, sessions, trials. A contribution comes in through
 * {@link org.tableweather.server.catalogue.Intake}; analyses read {@link org.tableweather.server.catalogue.PublishedSessions}.
 */
package org.tableweather.server.catalogue;
