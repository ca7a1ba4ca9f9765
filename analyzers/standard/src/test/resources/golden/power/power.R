cat("# Noncentral distributions and power: R 4.2.2 Patched (2022-11-10 r83330), pt(t, df, ncp), pf(f, d1, d2, ncp) and\n")
cat("# power.t.test(n = rooms, delta = slope, sd = sd, sig.level = 0.05, type = \"one.sample\", strict = TRUE)$power.\n")
cat("source.key = RCoreTeam2022\nsource.how = R 4.2.2 pt, pf, power.t.test\n")
g <- expand.grid(t=c(-3,-0.5,0,0.7,2.1,4,12), df=c(1,2.5,7,30,200), ncp=c(-2,0,0.5,3,9))
n <- function(x) paste(sprintf("%.15g", x), collapse=" ")
cat("t.t =", n(g$t), "\nt.df =", n(g$df), "\nt.ncp =", n(g$ncp), "\nt.below =", n(pt(g$t, g$df, g$ncp)), "\n")
g <- expand.grid(f=c(0.1,1,2.5,6,20), d1=c(1,2,5), d2=c(3,12.5,100), ncp=c(0,1,8,60))
cat("f.f =", n(g$f), "\nf.d1 =", n(g$d1), "\nf.d2 =", n(g$d2), "\nf.ncp =", n(g$ncp), "\nf.below =", n(pf(g$f, g$d1, g$d2, g$ncp)), "\n")
rooms <- c(2,3,5,8,12,30); slope <- c(0.8,0.5,0.3,0.2,0.2,0.1)
# climates -2 -1 0 1 2 held once, 20 trials; slope sd 0.25, session sd 0.5, trial sd 2
sd <- sqrt(0.25^2 + (0.5^2 + 2^2/20)/10)
p <- mapply(function(J,b) power.t.test(n=J, delta=b, sd=sd, sig.level=0.05, type="one.sample", strict=TRUE)$power, rooms, slope)
cat("plan.rooms =", n(rooms), "\nplan.slope =", n(slope), "\nplan.power =", n(p), "\n")
need <- sapply(c(0.2,0.15,0.1), function(b) {J <- 2; while (power.t.test(n=J, delta=b, sd=sd, sig.level=0.05, type="one.sample", strict=TRUE)$power < 0.8) J <- J+1; J})
cat("need.slope = 0.2 0.15 0.1\nneed.rooms =", n(need), "\n")
# any change: 3 climates held twice in 4 rooms, means 0, 0.5, 0.2
v <- 0.5^2 + 2^2/20; m <- c(0,0.5,0.2); lam <- 4*2*sum((m-mean(m))^2)/v; d2 <- 4*5-2
cat("any.power =", n(1-pf(qf(.95,2,d2),2,d2,lam)), "\n")
# the examples of the manual page of power.t.test: two groups of 20, and the size for 0.9; strict counts both tails
cat("groups.power =", n(power.t.test(n=20, delta=1, sd=1)$power), "\ngroups.n =", n(power.t.test(power=0.9, delta=1)$n),
    "\ngroups.strict =", n(power.t.test(n=20, delta=1, sd=1, strict=TRUE)$power), "\n")
