/**
 * A rigid ball on cloth between rails: motion in closed form from event to event, and impacts on a rail. SI units; knows tables
 * and rails, but no rooms, sessions or trials. How it works and how far it holds: {@code PHYSICS.md} of this module.
 */
package org.tableweather.analyzers.standard.physics;
