/**
 * How well do trials, sessions and rooms agree? One-way analysis of variance, repeatability and reproducibility, and the
 * consistency and outlier tests of interlaboratory studies. A laboratory is a room here, a replicate a trial.
 */
package org.tableweather.analyzers.standard.statistics.interlab;
