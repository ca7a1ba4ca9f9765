suppressMessages({library(lme4); library(lmerTest); library(pbkrtest); library(mgcv); library(nlme); library(clubSandwich); library(jsonlite)})
d <- read.csv("league.csv", stringsAsFactors=TRUE)
d$h <- (d$rh_pct-50)/10; d$t <- (d$temp_c-21)/5; d$y <- d$angle_deg
ctl <- lmerControl(optimizer="bobyqa", optCtrl=list(rhoend=1e-10, maxfun=1e6), calc.derivs=FALSE)
fit <- function(f, data=d) suppressMessages(lmerTest::lmer(f, data, REML=TRUE, control=ctl))
tab <- function(m, ddf="Satterthwaite") { s <- coef(summary(m, ddf=ddf)); list(names=rownames(s), value=unname(s[,1]), se=unname(s[,2]), df=unname(s[,3])) }
res <- list()
m <- fit(y ~ h + I(h^2) + t + (1+h|room) + (1|session))
res$default <- c(tab(m), list(criterion=REMLcrit(m), singular=isSingular(m)))
res$kenward_roger <- tab(m, "Kenward-Roger")
d$hb <- ave(d$h, d$room); d$hw <- d$h - d$hb
mw <- fit(y ~ hw + hb + I(h^2) + t + (1+hw|room) + (1|session))
ct <- contestMD(mw, rbind(c(0,-1,1,0,0)))
res$within_between <- c(tab(mw), list(F=ct[["F value"]], df_difference=ct[["DenDF"]], p=ct[["Pr(>F)"]]))
d$size <- factor(d$playing_length_mm)
ms <- fit(y ~ size + h + size:h + I(h^2) + t + (1+h|room) + (1|session))
nm <- names(fixef(ms)); L <- diag(length(nm))[grep(":", nm),]
cs <- contestMD(ms, L)
res$subgroup <- list(F=cs[["F value"]], num=cs[["NumDF"]], den=cs[["DenDF"]], p=cs[["Pr(>F)"]])
slopes <- list(); b <- fixef(ms); 
for (g in levels(d$size)) { l <- as.numeric(nm=="h") + as.numeric(nm==paste0("size",g,":h")); c1 <- contest1D(ms, l); slopes[[g]] <- list(value=c1[["Estimate"]], se=c1[["Std. Error"]], df=c1[["df"]]) }
res$subgroup$slopes <- slopes
o <- lm(y ~ h + I(h^2) + t, d); ctest <- coef_test(o, vcov="CR2", cluster=d$room)
res$robust <- list(value=ctest$beta[2], se=ctest$SE[2], df=ctest$df_Satt[2])
d$x <- (d$absolute_g_m3-9)/2
ma <- fit(y ~ x + I(x^2) + t + (1+x|room) + (1|session))
res$absolute <- c(tab(ma), list(criterion=REMLcrit(ma)))
g <- gamm(y ~ s(h, bs="cr", k=7) + t, data=d, knots=list(h=-3:3), random=list(room=~1+h, session=~1), method="REML", control=lmeControl(msMaxIter=500, tolerance=1e-12, msTol=1e-12, niterEM=0))
at <- c(-1.5,-1,-0.5,0,0.5,1,1.5)
p <- predict(g$gam, data.frame(h=at, t=0), se.fit=TRUE)
res$spline <- list(rh_pct=50+10*at, fit=unname(p$fit), se=unname(p$se.fit), edf=sum(g$gam$edf[grep("s\\(h\\)",names(coef(g$gam)))]), scale=g$gam$sig2, logLik=as.numeric(logLik(g$lme)))
res$source <- list(how="R 4.2.2: lme4, lmerTest (Satterthwaite), pbkrtest (Kenward-Roger), clubSandwich (CR2), mgcv gamm; league.R beside this file", versions=sapply(c("lme4","lmerTest","pbkrtest","clubSandwich","mgcv","nlme"), function(p) as.character(packageVersion(p))))
write_json(res, "league.json", digits=15, auto_unbox=TRUE, pretty=TRUE)
