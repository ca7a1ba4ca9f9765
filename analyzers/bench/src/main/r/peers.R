# The peers: the same trials, the same model, by lme4::lmer or nlme::lme. Times the fit alone, from a data frame in memory.
# Rscript peers.R FILE lme4|nlme; the file holds rooms, sessions a room, trials a session, then the columns, big-endian doubles.
arguments <- commandArgs(trailingOnly = TRUE)
suppressPackageStartupMessages(library(arguments[2], character.only = TRUE))
columns <- file(arguments[1], "rb")
size <- readBin(columns, "double", 3, endian = "big")
n <- prod(size)
rh_pct <- readBin(columns, "double", n, endian = "big")
temp_c <- readBin(columns, "double", n, endian = "big")
trials <- data.frame(
  angle = readBin(columns, "double", n, endian = "big"),
  h = (rh_pct - 50) / 10,
  t = (temp_c - 21) / 5,
  room = gl(size[1], size[2] * size[3]),
  session = gl(size[1] * size[2], size[3])
)
close(columns)
rm(rh_pct, temp_c)
seconds <- system.time(fit <- if (arguments[2] == "lme4") {
  lmer(angle ~ h + I(h^2) + t + (1 + h | room) + (1 | session), data = trials, REML = TRUE)
} else {
  lme(angle ~ h + I(h^2) + t, random = list(room = ~h, session = ~1), data = trials, method = "REML",
      control = lmeControl(returnObject = TRUE))
})[["elapsed"]]
cat(sprintf("first %.4f\nslope %.12g\ncriterion %.12g\n", seconds, fixef(fit)[["h"]], -2 * as.numeric(logLik(fit))))
