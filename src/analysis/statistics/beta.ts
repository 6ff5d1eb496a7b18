import { stirlingError } from './gamma.ts';

/**
 * Regularised incomplete beta function I_x(a, b): the chance that a beta-distributed number lies below x.
 * Continued fraction of DLMF 8.17.22, evaluated by Lentz's method.
 */
export function betaCdf(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = densityFactor(x, a, b);
  return x < (a + 1) / (a + b + 2) ? (front * fraction(x, a, b)) / a : 1 - (front * fraction(1 - x, b, a)) / b;
}

/**
 * x^a·(1 − x)^b / B(a, b). By deviances from the mean, so that it keeps its digits where a and b are millions and
 * powers and gamma functions would all but cancel.
 * Source: C. Loader, Fast and accurate computation of binomial probabilities (2000).
 */
function densityFactor(x: number, a: number, b: number): number {
  const n = a + b;
  const stirling = stirlingError(n) - stirlingError(a) - stirlingError(b);
  const exponent = stirling - deviance(a, n * x) - deviance(b, n * (1 - x));
  return Math.sqrt((a * b) / (2 * Math.PI * n)) * Math.exp(exponent);
}

/** k·ln(k/m) + m − k, which is near zero where k is near m. */
function deviance(k: number, m: number): number {
  const v = (k - m) / (k + m);
  if (Math.abs(v) >= 0.1) return k * Math.log(k / m) + m - k;
  // ln(k/m) = 2·artanh v, term by term; the first ones cancel with m − k.
  let sum = (k - m) * v;
  let power = 2 * k * v;
  for (let j = 3; j < 100; j += 2) {
    power *= v * v;
    const next = sum + power / j;
    if (next === sum) break;
    sum = next;
  }
  return sum;
}

function fraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const away = (v: number) => (Math.abs(v) < tiny ? tiny : v);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m <= 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    h *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return h;
}

/** The x below which a beta-distributed number lies with chance p. Bisection on the bits: 1e-15 relative. */
export function betaQuantile(p: number, a: number, b: number): number {
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  let lo = 0;
  let hi = 1;
  for (let i = 0; i < 2_000 && hi - lo > 1e-16 * hi; i++) {
    // Near 0 halving the logarithm finds small quantiles in few steps.
    const mid = lo === 0 ? (hi > 1e-8 ? hi / 2 : hi * 1e-3) : (lo + hi) / 2;
    if (betaCdf(mid, a, b) < p) lo = mid;
    else hi = mid;
  }
  return (lo + hi) / 2;
}
