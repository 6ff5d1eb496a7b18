import type { Interval } from '../expression/interval.ts';
import { operationNamed } from '../expression/operations/index.ts';
import { point } from '../expression/ranges.ts';
import { evaluateTree } from '../expression/readings/value.ts';
import type { Tree } from '../expression/tree.ts';
import { settled } from './settled.ts';

/** Three values: a comparison of a number that is not known is neither true nor false. */
export type Truth = 'yes' | 'no' | 'unknown';

/** What is known of a name: one number, or a range in which it may lie, `certain: false`. */
export type Knowledge = (name: string) => Interval;

/** A quantity of which nothing is known. None of ours is negative; temperatures are in kelvin. */
export const ANYTHING: Interval = { lo: 0, hi: Infinity, certain: false };

export const isPoint = ({ lo, hi }: Interval): boolean => lo === hi;

/**
 * The trees' interval reading with unknown numbers as open ranges, which is three-valued logic: `and` of a truth that
 * fails and one that is open fails. Where every number is known the value reading is taken, which rounds nothing outward.
 * @example rangeOf(parseExpression('and(E_cap >= 1 J, E_cap < 100 J)'), () => ANYTHING) // 0 … 1
 */
export function rangeOf(tree: Tree, known: Knowledge): Interval {
  if (tree.kind === 'number') return point(tree.value);
  if (tree.kind === 'symbol') return known(tree.name);
  const args = tree.args.map((arg) => rangeOf(arg, known));
  if (args.every(isPoint)) return pointOf(tree, args);
  const operation = operationNamed(tree.operation);
  const pairwise = operation.pairwise ? operationNamed(operation.pairwise) : undefined;
  const range = pairwise ? args.reduce((a, b) => pairwise.range([a, b])) : operation.range(args);
  return sound({ ...range, certain: false });
}

export function truthOf(tree: Tree, known: Knowledge): Truth {
  const { lo, hi } = rangeOf(tree, known);
  return lo >= 1 ? 'yes' : hi <= 0 ? 'no' : 'unknown';
}

/** Both sides of these are settled, so that rounding decides nothing. */
const COMPARISONS = new Set(['less', 'lessEqual', 'greater', 'greaterEqual']);

function pointOf(tree: Tree & { kind: 'call' }, args: readonly Interval[]): Interval {
  const compares = COMPARISONS.has(tree.operation);
  const numbers = tree.args.map((arg, i): Tree => {
    const value = args[i]!.lo;
    return { kind: 'number', value: compares ? settled(value) : value, text: String(value), at: arg.at };
  });
  const value = evaluateTree({ ...tree, args: numbers }, () => Number.NaN);
  return Number.isNaN(value) ? ANYTHING : point(value);
}

/** Zero times infinity says nothing. */
const sound = ({ lo, hi, certain }: Interval): Interval => ({
  lo: Number.isNaN(lo) ? 0 : lo,
  hi: Number.isNaN(hi) ? Infinity : hi,
  certain,
});
