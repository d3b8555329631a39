/**
 * P(true success rate ≥ rate) after `successes` of `attempts`, from a uniform prior: the upper tail of
 * Beta(successes + 1, attempts − successes + 1). For whole counts it is the binomial sum P(X ≤ successes) with
 * X ~ Binomial(attempts + 1, rate) (NIST DLMF 8.17.5), so that no numerical integration is needed. `rate` in 0…1.
 */
export function rateIsAtLeast(rate: number, successes: number, attempts: number): number {
  const n = attempts + 1
  let sum = 0
  let choose = 1
  for (let x = 0; x <= successes; x++) {
    sum += choose * rate ** x * (1 - rate) ** (n - x)
    choose = (choose * (n - x)) / (x + 1)
  }
  return Math.min(1, sum)
}
