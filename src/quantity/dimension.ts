/**
 * Dimensions: what kind of quantity a number is.
 * Exponents of the SI base units: metre, kilogram, second, ampere, kelvin, mole, candela (SI Brochure, 9th ed., table 2).
 * Plane angles are pure numbers (SI Brochure, table 4): a radian is 1.
 */
export type Dimension = readonly [
  metre: number,
  kilogram: number,
  second: number,
  ampere: number,
  kelvin: number,
  mole: number,
  candela: number,
];

export const pureNumber: Dimension = [0, 0, 0, 0, 0, 0, 0];

export const multiplied = (a: Dimension, b: Dimension): Dimension => combined(a, b, (x, y) => x + y);
export const divided = (a: Dimension, b: Dimension): Dimension => combined(a, b, (x, y) => x - y);
// `+ 0` turns the -0 of 0 × -1 into 0, so that equal dimensions are equal as data too.
export const raised = (a: Dimension, exponent: number): Dimension => combined(a, a, (x) => x * exponent + 0);

/** Whether two dimensions are the same; roots leave rounding in the exponents, so they are compared to 1e-9. */
export const same = (a: Dimension, b: Dimension): boolean => a.every((x, i) => Math.abs(x - b[i]!) < 1e-9);
export const isPure = (a: Dimension): boolean => same(a, pureNumber);

function combined(a: Dimension, b: Dimension, join: (x: number, y: number) => number): Dimension {
  return a.map((x, i) => join(x, b[i]!)) as unknown as Dimension;
}
