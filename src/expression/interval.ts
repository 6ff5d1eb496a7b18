/**
 * A closed range of numbers, `lo <= hi`, ends may be infinite. An interval that a reading returns is never too small.
 * `certain` is false when part of what went in lay outside the operation's domain (the root of a negative number, a
 * divisor that can be zero): the range then speaks of the rest only, or is the whole line.
 * IEEE 1788-2015, 9.1, set-based, with its decorations reduced to that one flag.
 */
export interface Interval {
  readonly lo: number;
  readonly hi: number;
  readonly certain: boolean;
}
