# Invented trials from a stated truth, and their fit by published software.
library(lmerTest)
set.seed(20260112)
d <- do.call(rbind, lapply(1:9, function(r) {
  u <- rnorm(1, 0, 0.3); v <- rnorm(1, 0, 0.08)
  do.call(rbind, lapply(1:5, function(s) {
    rh <- runif(1, 32, 68); tc <- runif(1, 19, 23); w <- rnorm(1, 0, 0.15)
    n <- sample(6:9, 1)
    rhi <- round(rh + rnorm(n, 0, 0.4), 1); ti <- round(tc + rnorm(n, 0, 0.1), 1)
    sp <- round(2 + rnorm(n, 0, 0.15), 2); h <- (rhi - 50) / 10
    y <- 2.65 + u + w + (0.25 + v) * h + 0.03 * h^2 + 0.05 * (ti - 21) / 5 - 1.2 * (sp - 2) + rnorm(n, 0, 0.4)
    data.frame(room = paste0("room", r), session = paste0("s", s), temp_c = ti, rh_pct = rhi, approach_speed_mps = sp,
               object_angle_deg = round(y, 3))
  }))
}))
write.csv(d, "throw.csv", row.names = FALSE, quote = FALSE)
d <- read.csv("throw.csv")
d$h <- (d$rh_pct - 50) / 10; d$h2 <- d$h^2; d$t <- (d$temp_c - 21) / 5; d$s <- d$approach_speed_mps - 2
d$ses <- interaction(d$room, d$session)
m <- lmer(object_angle_deg ~ h + h2 + t + s + (1 + h | room) + (1 | ses), d, REML = TRUE,
          control = lmerControl(optimizer = "bobyqa", optCtrl = list(rhobeg = 0.2, rhoend = 1e-10, maxfun = 1e6)))
co <- coef(summary(m)); nm <- c("intercept", "humidity", "humidity.squared", "temperature", "approach.speed")
cat("criterion =", format(REMLcrit(m), digits = 15), "\n")
for (i in 1:5) {
  cat(nm[i], "=", format(co[i, 1], digits = 12), "\n")
  cat(paste0(nm[i], ".se"), "=", format(co[i, 2], digits = 12), "\n")
  cat(paste0(nm[i], ".df"), "=", format(co[i, 3], digits = 10), "\n")
}
vc <- as.data.frame(VarCorr(m))
cat("sd.room.intercept =", format(vc$sdcor[vc$grp == "room" & vc$var1 == "(Intercept)" & is.na(vc$var2)], digits = 12), "\n")
cat("sd.room.humidity =", format(vc$sdcor[vc$grp == "room" & vc$var1 == "h" & is.na(vc$var2)], digits = 12), "\n")
cat("sd.session.intercept =", format(vc$sdcor[vc$grp == "ses"], digits = 12), "\n")
cat("sd.residual =", format(sigma(m), digits = 12), "\n")
