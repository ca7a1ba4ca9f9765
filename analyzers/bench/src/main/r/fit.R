# The peer: the same CSV, the same model, by R's recommended package nlme.
# Prints the slope at 50 %RH and the REML log-likelihood, so that the two answers can be compared as well as timed.
suppressPackageStartupMessages(library(nlme))
path <- commandArgs(trailingOnly = TRUE)[1]
trials <- read.csv(path)
trials$room <- factor(sub("-.*", "", trials$session))
trials$session <- factor(trials$session)
trials$h <- (trials$rh_pct - 50) / 10
trials$t <- (trials$temp_c - 21) / 5
fit <- lme(final_rebound_angle_deg ~ h + I(h^2) + t, random = list(room = ~h, session = ~1), data = trials,
           method = "REML", control = lmeControl(returnObject = TRUE))
cat(sprintf("slope %.12g\ncriterion %.12g\n", fixef(fit)[["h"]], -2 * as.numeric(logLik(fit))))
