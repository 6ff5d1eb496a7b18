import { bins, type Grid } from '../grid.ts';
import type { Layout } from './machine.ts';
import { tallyLayout as at } from './tally-layout.ts';

/** The tallies in a machine's memory, by the number of their output. */
export class Tallies {
  readonly #layout: Layout;
  readonly #doubles: Float64Array;
  readonly #words: Uint32Array;
  readonly #bytes: Uint8Array;

  constructor(layout: Layout, buffer: ArrayBuffer) {
    this.#layout = layout;
    this.#doubles = new Float64Array(buffer);
    this.#words = new Uint32Array(buffer);
    this.#bytes = new Uint8Array(buffer);
    for (let k = 0; k < layout.outputs; k++) {
      this.#words[this.#word(k, at.end)] = this.#store(k) + layout.storeSize;
      this.clear(k);
    }
  }

  address(k: number): number {
    return this.#layout.tallies + k * at.size;
  }
  #word(k: number, field: number): number {
    return (this.address(k) + field) / 4;
  }
  #store(k: number): number {
    return this.#layout.stores + k * this.#layout.storeSize;
  }
  #twice(k: number, field: number, value: number): void {
    const place = (this.address(k) + field) / 8;
    this.#doubles.fill(value, place, place + 2);
  }

  /** Forgets what was counted; keeps grid and flags. */
  clear(k: number): void {
    this.#twice(k, at.sum, 0);
    this.#twice(k, at.squares, 0);
    this.#twice(k, at.min, Infinity);
    this.#twice(k, at.max, -Infinity);
    this.#words[this.#word(k, at.failures)] = 0;
    this.#words[this.#word(k, at.next)] = this.#store(k);
    this.counts(k).fill(0);
  }

  /** Without a grid everything falls into bin 0. */
  setGrid(k: number, { shift, scale, offset }: Grid): void {
    this.#twice(k, at.shift, shift);
    this.#twice(k, at.scale, scale);
    this.#twice(k, at.offset, offset);
  }

  /** @param flags  1 for each bin whose values are to be kept */
  setFlags(k: number, flags: Uint8Array): void {
    const place = this.address(k) + at.flags;
    for (let bin = 0; bin < bins; bin++) this.#bytes[place + bin] = 8 * flags[bin]!;
  }

  /** Sums of x − shift and its square since they were last taken. */
  takeSums(k: number): [sum: number, squares: number] {
    const taken = [at.sum, at.squares].map((field) => {
      const place = (this.address(k) + field) / 8;
      return this.#doubles[place]! + this.#doubles[place + 1]!;
    });
    this.#twice(k, at.sum, 0);
    this.#twice(k, at.squares, 0);
    return taken as [number, number];
  }

  /** Least and greatest value, of those that are numbers. */
  extremes(k: number): [min: number, max: number] {
    const [low, high] = [at.min, at.max].map((field) => (this.address(k) + field) / 8) as [number, number];
    const d = this.#doubles;
    return [Math.min(d[low]!, d[low + 1]!), Math.max(d[high]!, d[high + 1]!)];
  }

  failures(k: number): number {
    return this.#words[this.#word(k, at.failures)]!;
  }

  /** The counts of all bins, as they stand in memory. */
  counts(k: number): Uint32Array {
    const place = this.#word(k, at.counts);
    return this.#words.subarray(place, place + bins);
  }

  /** Takes the values out of the store. */
  takeKept(k: number): Float64Array {
    const place = this.#word(k, at.next);
    const kept = this.#doubles.slice(this.#store(k) / 8, this.#words[place]! / 8);
    this.#words[place] = this.#store(k);
    return kept;
  }

  /** Puts values where the store is, as if they were a column. @returns where they stand */
  fillStore(k: number, values: Float64Array): { start: number; bytes: number } {
    const start = this.#store(k);
    this.#doubles.set(values, start / 8);
    return { start, bytes: values.byteLength };
  }
}
