/** Lanczos coefficients for g = 7, n = 9 (P. Godfrey's table, as widely reprinted; good to about 1e-15). */
const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/** Natural logarithm of the gamma function for x > 0, to about 1e-14 relative. */
export function lnGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - lnGamma(1 - x);
  const z = x - 1;
  const t = z + 7.5;
  const sum = lanczos.reduce((total, c, i) => (i === 0 ? c : total + c / (z + i)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

/**
 * What Stirling's formula is short of: ln Γ(n + 1) − ((n + ½)·ln n − n + ½·ln 2π), to about 1e-15, for n > 0. Between
 * large numbers that nearly cancel it keeps the digits that differences of `lnGamma` lose.
 * Source: the asymptotic series of DLMF 5.11.1.
 */
export function stirlingError(n: number): number {
  if (n < 15) return lnGamma(n + 1) - ((n + 0.5) * Math.log(n) - n + 0.5 * Math.log(2 * Math.PI));
  const s = 1 / (n * n);
  return (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - (1 / 1188) * s) * s) * s) * s) / n;
}
