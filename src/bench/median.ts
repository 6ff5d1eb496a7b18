export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** Milliseconds that `work` takes, and what it gives. */
export function timed<T>(work: () => T): { readonly ms: number; readonly result: T } {
  const start = performance.now();
  const result = work();
  return { ms: performance.now() - start, result };
}
