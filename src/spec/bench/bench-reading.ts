import type { Quantity } from '../../quantity/quantity.ts';
import type { Unit } from '../../quantity/unit.ts';

/** One line of `bench.csv`: what somebody read on a real board. SI base units. */
export interface BenchReading {
  /** `B-1`, in the order of the file. */
  readonly id: string;
  readonly line: number;
  /** Test point at which it was read: `bus_sense.tap`; absent for a result at stated conditions. */
  readonly point?: string;
  /** Result that was read. */
  readonly reads: string;
  /** What was applied beside, or in place of, the stimulus of the test point: condition or symbol of its circuit. */
  readonly when: ReadonlyMap<string, Quantity>;
  readonly value: number;
  /** Half-width of the interval that holds the true value at 95 % (k = 2). */
  readonly uncertainty: number;
  /** Unit as typed. */
  readonly unit: Unit;
  readonly date: string;
  readonly sample?: string;
  readonly instrument?: string;
  /** Role of who read it. */
  readonly by?: string;
  readonly remark?: string;
}
