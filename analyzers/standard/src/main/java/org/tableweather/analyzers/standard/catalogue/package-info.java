/** The analyzers: from records to one of the estimators, and back to words, figures and plots. */
package org.tableweather.analyzers.standard.catalogue;
