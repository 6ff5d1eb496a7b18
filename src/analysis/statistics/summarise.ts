/** What a sample says of a spread. */
export interface Summary {
  readonly mean: number;
  /** With n − 1. */
  readonly sd: number;
  readonly min: number;
  readonly max: number;
}

/** Mean and deviation in two passes, both sums compensated, so that offsets of 1e9 deviations lose no digit. */
export function summarise(values: ArrayLike<number>): Summary {
  const n = values.length;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  const sum = new Sum();
  for (let i = 0; i < n; i++) {
    const x = values[i]!;
    if (x < min) min = x;
    if (x > max) max = x;
    sum.add(x);
  }
  const mean = sum.value / n;
  const [squares, rest] = [new Sum(), new Sum()];
  for (let i = 0; i < n; i++) {
    const d = values[i]! - mean;
    squares.add(d * d);
    rest.add(d);
  }
  // The mean itself is rounded: what its error adds to the squares is taken out again.
  const spread = (squares.value - rest.value ** 2 / n) / (n - 1);
  return { mean: mean + rest.value / n, sd: n > 1 ? Math.sqrt(Math.max(0, spread)) : 0, min, max };
}

/** Neumaier's compensated sum. */
export class Sum {
  #sum = 0;
  #lost = 0;

  add(x: number): void {
    const sum = this.#sum + x;
    this.#lost += Math.abs(this.#sum) >= Math.abs(x) ? this.#sum - sum + x : x - sum + this.#sum;
    this.#sum = sum;
  }

  get value(): number {
    return this.#sum + this.#lost;
  }
}
