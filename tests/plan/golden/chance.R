# Golden values of Student's t and of the entry chance, from R's own pt, qt and integrate.
# Made with:  Rscript tests/plan/golden/chance.R > tests/plan/golden/chance.tsv
# Columns of a "t" row: degrees of freedom, x, upper tail, quantile 0.975.
# Columns of a "chance" row: mean, sd, n, thinnest um, u um, travel um, chance.

options(digits = 17)
row <- function(...) cat(paste(c(...), collapse = "\t"), "\n", sep = "")
text <- function(x) sprintf("%.15g", x)

for (df in c(1, 2, 5, 9, 10, 16, 30, 200)) for (x in c(-3, -0.5, 0, 0.7, 2.228, 5, 12))
  row("t", df, text(x), text(pt(x, df, lower.tail = FALSE)), text(qt(0.975, df)))

entry_chance <- function(mean, sd, n, wall, u, s) {
  k <- sd * sqrt(1 + 1 / n)
  p <- function(z) pt((wall + u * z - mean * s) / (k * s), n - 1, lower.tail = FALSE)
  if (u == 0) return(p(0))
  # Cut where the integrand turns, or integrate() may step over it.
  turn <- (mean * s - wall) / u
  width <- k * s / u
  cuts <- sort(unique(pmax(-9, pmin(9, c(-9, -4, -1, 0, 1, 4, 9, turn + width * c(-8, -2, 0, 2, 8))))))
  sum(sapply(seq_len(length(cuts) - 1), function(i)
    integrate(function(z) dnorm(z) * p(z), cuts[i], cuts[i + 1], rel.tol = 1e-12, abs.tol = 1e-14, subdivisions = 2000L)$value))
}

chance <- function(mean, sd, n, wall, u, s) row("chance", mean, sd, n, wall, u, s, text(entry_chance(mean, sd, n, wall, u, s)))
for (share in c(0.70, 0.80, 0.85, 0.90, 0.95)) chance(1.046, 0.082, 11, 600, 0, 600 * share)
for (u in c(3, 6, 10.4, 20)) for (s in c(60, 180, 300, 420, 480, 540, 600, 660, 780)) chance(1.046, 0.082, 11, 612, u, s)
chance(1, 0.05, 2, 500, 12, 400)
chance(1.02, 0.06, 40, 550, 9, 500)
chance(1, 0.004, 30, 600, 25, 560)
chance(1.046, 0.082, 11, 595.2, 20.1, 62.5 * 8)
