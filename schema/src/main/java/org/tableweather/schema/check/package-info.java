/** Checks: rules with a severity, a bound and a reference key, and what they found. The same code judges in CLI and server. */
package org.tableweather.schema.check;
