/**
 * Random numbers by position: the number for a trial depends on the seed, the name of the variable and the trial alone,
 * so that threads, block sizes and other parts change nothing.
 * The position is mixed twice by a 32-bit finaliser (the constants of C. Wellons' search for low bias, "prospecting for
 * hash functions", 2018: 0x7feb352d, 0x846ca68b).
 */
export function streamOf(seed: number, name: string): number {
  let h = mix(seed ^ 0x9e3779b9);
  for (let i = 0; i < name.length; i++) h = mix(h ^ (name.charCodeAt(i) + Math.imul(i, 0x9e3779b9)));
  return h;
}

/** A number in (0, 1), one of 2³² midpoints. `attempt` gives a further one for the same trial. */
export function uniformAt(stream: number, trial: number, attempt = 0): number {
  const position = mix(stream ^ mix(trial + Math.imul(attempt, 0x632be5ab)));
  const twice = mix(position + Math.imul(trial, 0x9e3779b9));
  return ((twice >>> 0) + 0.5) * 2 ** -32;
}

function mix(value: number): number {
  let h = value | 0;
  h ^= h >>> 16;
  h = Math.imul(h, 0x7feb352d);
  h ^= h >>> 15;
  h = Math.imul(h, 0x846ca68b);
  h ^= h >>> 16;
  return h;
}
