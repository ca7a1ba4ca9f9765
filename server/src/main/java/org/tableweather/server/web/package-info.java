/**
 * What every feature needs to speak HTTP: refusals with codes, problem details for every error, bounds on bodies, entity
 * tags, cursors. Knows no feature.
 */
package org.tableweather.server.web;
