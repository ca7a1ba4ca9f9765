/** How often a shot goes in, over the climate: attempts are yes or no, so the model is one of odds, not of means. */
package org.tableweather.analyzers.standard.catalogue.rate;
