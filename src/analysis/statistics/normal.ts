/** Chance that a standard normal number lies below z, to about 1e-15: series inside, continued fraction in the tails. */
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
 * The z below which a standard normal number lies with chance p, 0 < p < 1, to about 1e-15 relative. Written out, since it
 * is called for every part of every simulated board.
 * Source: M. J. Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (1988) 477–484.
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (q >= -0.425 && q <= 0.425) return q * middle(0.180625 - q * q);
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const z = r <= 5 ? outer(r - 1.6) : far(r - 5);
  return q < 0 ? -z : z;
}

// biome-ignore format: two rows of coefficients read better than sixteen lines
function middle(x: number): number {
  return (((((((2509.0809287301227 * x + 33430.57558358813) * x + 67265.7709270087) * x + 45921.95393154987) * x + 13731.69376550946) * x + 1971.5909503065513) * x + 133.14166789178438) * x + 3.3871328727963665) / (((((((5226.495278852854 * x + 28729.085735721943) * x + 39307.89580009271) * x + 21213.794301586597) * x + 5394.196021424751) * x + 687.1870074920579) * x + 42.31333070160091) * x + 1);
}

// biome-ignore format: as above
function outer(x: number): number {
  return (((((((0.0007745450142783414 * x + 0.022723844989269184) * x + 0.2417807251774506) * x + 1.2704582524523684) * x + 3.6478483247632045) * x + 5.769497221460691) * x + 4.630337846156546) * x + 1.4234371107496835) / (((((((1.0507500716444169e-9 * x + 0.0005475938084995345) * x + 0.015198666563616457) * x + 0.14810397642748008) * x + 0.6897673349851) * x + 1.6763848301838038) * x + 2.053191626637759) * x + 1);
}

// biome-ignore format: as above
function far(x: number): number {
  return (((((((2.0103343992922881e-7 * x + 0.000027115555687434876) * x + 0.0012426609473880784) * x + 0.026532189526576124) * x + 0.29656057182850487) * x + 1.7848265399172913) * x + 5.463784911164114) * x + 6.657904643501103) / (((((((2.0442631033899397e-15 * x + 1.421511758316446e-7) * x + 0.000018463183175100548) * x + 0.0007868691311456133) * x + 0.014875361290850615) * x + 0.1369298809227358) * x + 0.599832206555888) * x + 1);
}
