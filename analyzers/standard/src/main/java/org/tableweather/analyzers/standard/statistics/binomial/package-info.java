/** Does the climate change how often it goes in? A binomial mixed model with a random intercept by room. */
package org.tableweather.analyzers.standard.statistics.binomial;
