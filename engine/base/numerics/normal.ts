/** The normal distribution: deviate of a share, share below a deviate. */

/**
 * Normal deviate of a share, by Acklam's rational approximation with one Halley step; |error| < 1e-9.
 * share 0 < p < 1. Source: P. J. Acklam 2003 (the approximation); checked with normal tables.
 */
export function normalDeviate(share: number): number {
  if (share > 0.5) return -normalDeviate(1 - share);
  const start = share < 0.02425 ? tail(Math.sqrt(-2 * Math.log(share))) : middle(share - 0.5);
  const error = normalShare(start) - share;
  const step = error * Math.sqrt(2 * Math.PI) * Math.exp((start * start) / 2);
  return start - step / (1 + (start * step) / 2);
}

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduce((sum, coefficient) => sum * x + coefficient, 0);
}

function tail(q: number): number {
  const above = [-7.784894002430293e-3, -0.3223964580411365, -2.400758277161838, -2.549732539343734];
  const below = [7.784695709041462e-3, 0.3224671290700398, 2.445134137142996, 3.754408661907416, 1];
  return polynomial([...above, 4.374664141464968, 2.938163982698783], q) / polynomial(below, q);
}

function middle(q: number): number {
  const r = q * q;
  const above = [-39.69683028665376, 220.9460984245205, -275.9285104469687, 138.357751867269];
  const below = [-54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972];
  const top = polynomial([...above, -30.66479806614716, 2.506628277459239], r);
  return (top * q) / polynomial([...below, -13.28068155288572, 1], r);
}

/** erfc by a Chebyshev fit, relative error below 1.2e-7. Source: W. H. Press et al., Numerical Recipes, §6.2. */
function complementaryError(x: number): number {
  const t = 1 / (1 + 0.5 * Math.abs(x));
  const fit = [
    0.17087277, -0.82215223, 1.48851587, -1.13520398, 0.27886807, -0.18628806, 0.09678418, 0.37409196,
    1.00002368, -1.26551223,
  ];
  const value = t * Math.exp(-x * x + polynomial(fit, t));
  return x >= 0 ? value : 2 - value;
}

/** Share of a normal distribution below a deviate; |error| < 1.2e-7. */
export const normalShare = (deviate: number): number => 0.5 * complementaryError(-deviate / Math.SQRT2);
