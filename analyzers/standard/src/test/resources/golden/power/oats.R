# Rscript oats.R > oats.properties
# Six blocks, three varieties on whole plots, four rates of nitrogen on sub-plots.
suppressMessages(library(nlme))
n <- function(x) paste(sprintf("%.15g", x), collapse=" ")
cat("# The oats of Yates (1935) as R's nlme holds them, analysed in Pinheiro & Bates (2000): blocks stand for rooms, varieties on\n")
cat("# whole plots for climates held once, rates of nitrogen on sub-plots for four trials. Regenerate: Rscript oats.R\n")
cat("source.key = Pinheiro2000\n")
cat("source.how =", R.version.string, "with nlme", format(packageVersion("nlme")), "lme, aov with Error(Block/Variety), qf, pf\n")
o <- as.data.frame(Oats)
o$Block <- factor(as.character(o$Block)); o$nitro <- factor(o$nitro)
o$x <- c("Golden Rain"=-1, "Marvellous"=0, "Victory"=1)[as.character(o$Variety)]
g <- lme(yield ~ x + I(x^2) + nitro, data=o, random=~1|Block/Variety, control=lmeControl(msTol=1e-14, tolerance=1e-12, niterEM=500))
v <- as.numeric(VarCorr(g)[c(4, 5), 1])
cat("lme.wholeVariance =", n(v[1]), "\nlme.subVariance =", n(v[2]), "\nlme.trendError =", n(summary(g)$tTable["x", "Std.Error"]), "\n")
s <- summary(aov(yield ~ nitro * Variety + Error(Block/Variety), data=o))
whole <- s[["Error: Block:Variety"]][[1]]; sub <- s[["Error: Within"]][[1]]
cat("aov.f =", n(whole[1, "F value"]), "\naov.wholeDf =", n(whole[, "Df"]), "\n")
cat("aov.wholeMeanSquare =", n(whole[2, "Mean Sq"]), "\naov.subMeanSquare =", n(sub[3, "Mean Sq"]), "\n")
m <- tapply(o$yield, as.character(o$Variety), mean)
cat("means =", n(m), "\n")
cat("power =", n(1 - pf(qf(0.95, 2, 10), 2, 10, 2 * whole[1, "F value"])), "\n")
cat("power.twice =", n(1 - pf(qf(0.95, 2, 10), 2, 10, 4 * 2 * whole[1, "F value"])), "\n")
