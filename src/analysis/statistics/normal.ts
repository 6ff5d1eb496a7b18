/**
 * Chance that a standard normal number lies below z, to about 1e-15: series inside, continued fraction in the tails.
 */
export function normalCdf(z: number): number {
  const x = Math.abs(z);
  const density = Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  if (x > 38) return z < 0 ? 0 : 1;
  if (x < 3) {
    // Abramowitz and Stegun 26.2.11
    let term = x;
    let sum = x;
    for (let k = 1; Math.abs(term) > 1e-17 * sum && k < 200; k++) sum += term *= (x * x) / (2 * k + 1);
    return z < 0 ? 0.5 - density * sum : 0.5 + density * sum;
  }
  // Abramowitz and Stegun 26.2.14
  let fraction = x;
  for (let k = 160; k > 0; k--) fraction = x + k / fraction;
  const tail = density / fraction;
  return z < 0 ? tail : 1 - tail;
}

/**
 * The z below which a standard normal number lies with chance p, 0 < p < 1, to about 1e-15 relative.
 * Source: M. J. Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (1988) 477–484.
 * @param ln  the logarithm to use
 */
export function normalQuantile(p: number, ln: (x: number) => number = Math.log): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(0.180625 - q * q, middle);
  const r = Math.sqrt(-ln(q < 0 ? p : 1 - p));
  const z = r <= 5 ? ratio(r - 1.6, outer) : ratio(r - 5, far);
  return q < 0 ? -z : z;
}

type Rational = readonly [above: readonly number[], below: readonly number[]];

const ratio = (x: number, [above, below]: Rational): number => polynomial(x, above) / polynomial(x, below);

function polynomial(x: number, coefficients: readonly number[]): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * x + coefficients[i]!;
  return sum;
}

const middle: Rational = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087,
    33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
];
const outer: Rational = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
];
const far: Rational = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 0.000018463183175100548,
    1.421511758316446e-7, 2.0442631033899397e-15,
  ],
];
