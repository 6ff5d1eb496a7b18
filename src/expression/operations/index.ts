import type { Operation } from '../operation.ts';
import { abs } from './abs.ts';
import { add } from './add.ts';
import { and } from './and.ts';
import { atan } from './atan.ts';
import { atan2 } from './atan2.ts';
import { ceil } from './ceil.ts';
import { cos } from './cos.ts';
import { divide } from './divide.ts';
import { exp } from './exp.ts';
import { floor } from './floor.ts';
import { greater } from './greater.ts';
import { greaterEqual } from './greater-equal.ts';
import { hypot } from './hypot.ts';
import { choose } from './if.ts';
import { inrush } from './inrush.ts';
import { interp } from './interp.ts';
import { less } from './less.ts';
import { lessEqual } from './less-equal.ts';
import { ln } from './ln.ts';
import { log2 } from './log2.ts';
import { log10 } from './log10.ts';
import { max } from './max.ts';
import { min } from './min.ts';
import { multiply } from './multiply.ts';
import { negate } from './negate.ts';
import { not } from './not.ts';
import { or } from './or.ts';
import { parallel } from './parallel.ts';
import { power } from './power.ts';
import { round } from './round.ts';
import { share } from './share.ts';
import { sin } from './sin.ts';
import { sqrt } from './sqrt.ts';
import { square } from './square.ts';
import { subtract } from './subtract.ts';
import { sum } from './sum.ts';
import { tan } from './tan.ts';

const all = {
  add,
  subtract,
  multiply,
  divide,
  power,
  negate,
  square,
  sqrt,
  abs,
  min,
  max,
  sum,
  hypot,
  parallel,
  share,
  exp,
  ln,
  log10,
  log2,
  sin,
  cos,
  tan,
  atan,
  atan2,
  floor,
  ceil,
  round,
  interp,
  inrush,
  if: choose,
  less,
  lessEqual,
  greater,
  greaterEqual,
  and,
  or,
  not,
} satisfies Record<string, Operation>;

export type OperationName = keyof typeof all;

/** Every operation by the name that trees and tapes call it by. One more is one file here and one word in this list. */
export const operations: Readonly<Record<OperationName, Operation>> = all;

/** What is written with a sign and so cannot be called by name. */
const SIGNS: ReadonlySet<string> = new Set([
  'add',
  'subtract',
  'multiply',
  'divide',
  'power',
  'negate',
  'less',
  'lessEqual',
  'greater',
  'greaterEqual',
]);

/** Names that may stand before a bracket: `sqrt`, `parallel`, … */
export const functionNames: readonly string[] = Object.keys(all).filter((name) => !SIGNS.has(name));

/** The operation of that name. Throws where there is none: names from text were checked when it was parsed. */
export function operationNamed(name: string): Operation {
  if (!Object.hasOwn(operations, name)) throw new Error(`no operation is called ${name}`);
  return operations[name as OperationName];
}
