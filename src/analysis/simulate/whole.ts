import { type Spread, spreadOf } from './spread.ts';

/** Computes boards a block at a time. */
export interface Blocks {
  readonly block: number;
  /** Outputs of the block of boards from `from` on; valid until the next call. */
  run(from: number): readonly Float64Array[];
}

/** Numbers kept at a time. */
const most = 4_000_000;

/**
 * Spreads by keeping every value, a few outputs at a time so that memory has a bound: the plain way, for outputs that
 * cannot be told from counts, and where there is no SIMD.
 * @param blocks  starts the boards for some of the outputs
 * @param see  is shown all values of each output
 */
export function wholeSpreads(
  outputs: readonly number[],
  trials: number,
  blocks: (outputs: readonly number[]) => Blocks,
  see: (values: Float64Array, output: number) => void = () => undefined,
): Spread[] {
  const together = Math.max(1, Math.floor(most / trials));
  const spreads: Spread[] = [];
  for (let first = 0; first < outputs.length; first += together) {
    const some = outputs.slice(first, first + together);
    columnsOf(blocks(some), some.length, trials).forEach((values, k) => {
      see(values, first + k);
      spreads.push(spreadOf(values));
    });
  }
  return spreads;
}

function columnsOf({ block, run }: Blocks, outputs: number, trials: number): Float64Array[] {
  const columns = Array.from({ length: outputs }, () => new Float64Array(trials));
  for (let from = 0; from < trials; from += block) {
    const results = run(from);
    const size = Math.min(block, trials - from);
    columns.forEach((column, k) => {
      column.set(results[k]!.subarray(0, size), from);
    });
  }
  return columns;
}
