# Invented attempts after three steps of the climate, and their fit by published software: nls with all parameters for the time
# constant and its standard error; its 95 % profile interval by solving RSS(tau) = RSS (1 + F/df), the levels by lm at each tau.
set.seed(20260309)
tau <- 3.2; a <- c(31, 33.5, 30.2); d <- c(-1.9, 2.4, -1.2)
x <- do.call(rbind, lapply(1:3, function(s) {
  t <- sort(round(runif(24, 0.2, 14), 2))
  data.frame(step = s, hours = t, angle = round(a[s] + d[s] * exp(-t / tau) + rnorm(24, 0, 0.35), 3))
}))
write.csv(x, "decay.csv", row.names = FALSE, quote = FALSE)
x <- read.csv("decay.csv")
rss <- function(tau) sum(sapply(1:3, function(s) { z <- x[x$step == s, ]; sum(resid(lm(angle ~ exp(-hours / tau), z))^2) }))
m <- nls(angle ~ a[step] + d[step] * exp(-exp(-lt) * hours), x, start = list(a = a, d = d, lt = log(tau)),
         control = nls.control(tol = 1e-7))
lt <- coef(m)[["lt"]]; df <- df.residual(m)
b <- deviance(m) * (1 + qf(0.95, 1, df) / df)
f <- function(l) rss(exp(l)) - b
cat("tau =", format(exp(lt), digits = 14), "\n")
cat("error =", format(coef(summary(m))["lt", 2], digits = 12), "\n")
cat("rss =", format(deviance(m), digits = 14), "\n")
cat("df =", df, "\n")
cat("lower =", format(exp(uniroot(f, c(lt - 2, lt), tol = 1e-14)$root), digits = 12), "\n")
cat("upper =", format(exp(uniroot(f, c(lt, lt + 3), tol = 1e-14)$root), digits = 12), "\n")
cat("levels =", format(coef(m)[c(1, 4, 2, 5, 3, 6)], digits = 12), "\n")
cat("constant =", format(sum(sapply(1:3, function(s) { z <- x$angle[x$step == s]; sum((z - mean(z))^2) })), digits = 14), "\n")
