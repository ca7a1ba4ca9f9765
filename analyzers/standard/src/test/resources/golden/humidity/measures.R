# What each measure explains, by full likelihood, on league.csv: R and lme4, lmer(REML = FALSE), AIC(); no BIC is taken over, since R's
# counts trials where ours counts sessions: it is criterion + k log(n) by the model's own definition.
suppressMessages(library(lme4))
d <- read.csv("league.csv")
d$h <- (d$rh_pct - 50) / 10
d$t <- (d$temp_c - 21) / 5
ctl <- lmerControl(optCtrl = list(maxfun = 1e6, rhoend = 1e-12))
line <- function(name, f) {
  m <- lmer(f, d, REML = FALSE, control = ctl)
  cat(sprintf("%s.criterion = %.12g\n%s.aic = %.12g\n", name, -2 * c(logLik(m)), name, AIC(m)))
}
cat("# Made by measures.R from league.csv, which is invented.\n")
cat("source.key = Bates2015\nsource.how = R", as.character(getRversion()), "lme4", as.character(packageVersion("lme4")), "\n")
line("relative-humidity", angle_deg ~ h + (1 + h | room) + (1 | session))
line("temperature", angle_deg ~ t + (1 + t | room) + (1 | session))
line("nothing", angle_deg ~ 1 + (1 | room) + (1 | session))
