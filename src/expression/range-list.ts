import type { Interval } from './interval.ts';

/**
 * Many ranges side by side, as three columns: a search looks at millions, and a column needs no object for each.
 * Each is what an `Interval` is.
 */
export class RangeList {
  readonly lo: Float64Array;
  readonly hi: Float64Array;
  /** 1 for certain. */
  readonly certain: Uint8Array;

  constructor(length: number) {
    this.lo = new Float64Array(length);
    this.hi = new Float64Array(length);
    this.certain = new Uint8Array(length).fill(1);
  }

  static of(ranges: readonly Interval[]): RangeList {
    const list = new RangeList(ranges.length);
    ranges.forEach((range, i) => {
      list.set(i, range);
    });
    return list;
  }

  get length(): number {
    return this.lo.length;
  }

  at(i: number): Interval {
    return { lo: this.lo[i]!, hi: this.hi[i]!, certain: this.certain[i] === 1 };
  }

  set(i: number, { lo, hi, certain }: Interval): void {
    this.put(i, lo, hi, certain ? 1 : 0);
  }

  put(i: number, lo: number, hi: number, certain: number): void {
    this.lo[i] = lo;
    this.hi[i] = hi;
    this.certain[i] = certain;
  }

  all(): Interval[] {
    return Array.from(this.lo, (_, i) => this.at(i));
  }
}
