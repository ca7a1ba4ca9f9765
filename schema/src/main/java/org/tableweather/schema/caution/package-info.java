/**
 * What to mind before a climate is held or a heater runs: heat, damp, condensation, electrical load, unattended heating.
 *
 * <p>Advice for people, not a judgement of their data. Each caution names value, bound and source, and leaves the last word to local
 * codes and to people licensed for the work.
 */
package org.tableweather.schema.caution;
