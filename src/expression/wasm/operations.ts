import type { OperationName } from '../operations/index.ts';
import type { Code, Term } from './code.ts';
import { atan, atan2 } from './functions/arc.ts';
import type { Elementary } from './functions/elementary.ts';
import { exp } from './functions/exp.ts';
import { inrush } from './functions/inrush.ts';
import { ln } from './functions/ln.ts';
import { log2, log10 } from './functions/log.ts';
import { power } from './functions/power.ts';
import { cos, sin, tan } from './functions/turn.ts';
import { bits, f64x2, pattern, twice } from './vectors.ts';

/** Code of an operation on a pair of trials. The arguments may be written several times. */
export type Writer = (code: Code, args: readonly Term[]) => Term;

const plain =
  (instruction: (...args: readonly Term[]) => Term): Writer =>
  (_, args) =>
    instruction(...args);

/** 1 where `holds`, 0 where `fails`, not a number where neither. */
const truth =
  (holds: (a: Term, b: Term) => Term, fails: (a: Term, b: Term) => Term): Writer =>
  (_, [a, b]) =>
    bits.select(twice(1), bits.select(twice(0), twice(NaN), fails(a!, b!)), holds(a!, b!));

/** Halves go up; the sign of zero is that of a. */
const rounded: Writer = (code, [a]) => {
  const below = code.let(f64x2.floor(a!));
  const up = f64x2.ge(f64x2.sub(a!, below), twice(0.5));
  const whole = f64x2.add(below, bits.and(up, twice(1)));
  return bits.or(whole, bits.and(a!, pattern(0x80000000)));
};

/** The segment that x stands in is chosen first, so that one line is computed and not one for each. */
const interpolated: Writer = (code, [x, ...points]) => {
  const last = points.length - 2;
  let segment = points.slice(last - 2).map((point) => code.let(point));
  for (let i = last - 4; i >= 0; i -= 2) {
    const left = code.let(f64x2.le(x!, points[i + 2]!));
    segment = points.slice(i, i + 4).map((point, k) => code.let(bits.select(point, segment[k]!, left)));
  }
  const [x1, y1, x2, y2] = segment as [Term, Term, Term, Term];
  const width = code.let(f64x2.sub(x2, x1));
  const line = f64x2.add(
    f64x2.mul(y1, f64x2.div(f64x2.sub(x2, x!), width)),
    f64x2.mul(y2, f64x2.div(f64x2.sub(x!, x1), width)),
  );
  const held = bits.select(points[last + 1]!, line, f64x2.gt(x!, points[last]!));
  return bits.select(points[1]!, held, f64x2.le(x!, points[0]!));
};

/**
 * Every operation of a tape: code with the same steps of arithmetic as its `code`, or a function of our own, which
 * gives the same bits on every machine.
 */
export const writers: Readonly<Record<OperationName, Writer | Elementary>> = {
  add: plain(f64x2.add),
  sum: plain(f64x2.add),
  subtract: plain(f64x2.sub),
  multiply: plain(f64x2.mul),
  divide: plain(f64x2.div),
  negate: plain(f64x2.neg),
  square: (_, [a]) => f64x2.mul(a!, a!),
  sqrt: plain(f64x2.sqrt),
  abs: plain(f64x2.abs),
  min: plain(f64x2.min),
  max: plain(f64x2.max),
  hypot: (_, [a, b]) => f64x2.sqrt(f64x2.add(f64x2.mul(a!, a!), f64x2.mul(b!, b!))),
  parallel: (_, [a, b]) => f64x2.div(f64x2.mul(a!, b!), f64x2.add(a!, b!)),
  share: (_, [a, b]) => f64x2.div(a!, f64x2.add(a!, b!)),
  power,
  exp,
  ln,
  log10,
  log2,
  sin,
  cos,
  tan,
  atan,
  atan2,
  floor: plain(f64x2.floor),
  ceil: plain(f64x2.ceil),
  round: rounded,
  interp: interpolated,
  inrush,
  if: (_, [c, a, b]) => bits.select(a!, bits.select(b!, twice(NaN), f64x2.eq(c!, twice(0))), f64x2.eq(c!, twice(1))),
  less: truth(f64x2.lt, f64x2.ge),
  lessEqual: truth(f64x2.le, f64x2.gt),
  greater: truth(f64x2.gt, f64x2.le),
  greaterEqual: truth(f64x2.ge, f64x2.lt),
  and: plain(f64x2.mul),
  or: plain(f64x2.max),
  not: (_, [a]) => f64x2.sub(twice(1), a!),
};
