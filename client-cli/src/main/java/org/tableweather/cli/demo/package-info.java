/**
 * The demonstration: an invented league whose sessions are drawn, by a seeded generator, from a truth that is stated, so
 * that what the pooled analysis finds can be compared with what was put in. Nothing here was measured anywhere.
 */
package org.tableweather.cli.demo;
