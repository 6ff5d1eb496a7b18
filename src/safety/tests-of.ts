import type { Interval } from '../expression/interval.ts';
import { show } from '../expression/show.ts';
import type { Tree } from '../expression/tree.ts';
import { figureOf, truthfulFigure, typedFigure } from './figures.ts';
import { factOf } from './flag-trees.ts';
import { namesIn } from './names-in.ts';
import type { SafetyData } from './safety-data.ts';
import type { HazardValue, Solved } from './solve.ts';
import { rangeOf, type Truth, truthOf } from './truths.ts';

/** One comparison or fact on which a trigger turned on this board. */
export interface HazardTest {
  /** `E_cap >= 100 J`, `has_motor`. */
  readonly statement: string;
  /** Names in it. */
  readonly symbols: readonly string[];
  readonly truth: Truth;
  /** The number of this board as printed, `yes` or `no` for a fact, empty where nothing is known. */
  readonly number: string;
  /** What it is held against; empty for a fact. */
  readonly threshold: string;
  /** `E_cap = 0.412 J < 100 J`, `a motor is connected`, `V_regen is unknown`. */
  readonly says: string;
  /** What would have to be given, where the truth is unknown. */
  readonly missing: readonly string[];
}

/**
 * The comparisons and facts that decide a trigger: where it fails, those that make it fail; where it holds, those that
 * make it hold; where it is open, those that are open.
 */
export function testsOf(trigger: Tree, solved: Solved, data: SafetyData): HazardTest[] {
  const isFlag = (name: string) => data.flags.has(name);
  const visit = (tree: Tree): HazardTest[] => {
    const truth = truthOf(tree, solved.known);
    if (tree.kind === 'call' && (tree.operation === 'and' || tree.operation === 'or')) {
      return tree.args.filter((arg) => truthOf(arg, solved.known) === truth).flatMap(visit);
    }
    if (tree.kind === 'call' && tree.operation === 'not') return visit(tree.args[0]!);
    const fact = factOf(tree, isFlag);
    return [fact ? ofFact(fact, truth, solved, data) : ofComparison(tree, truth, solved)];
  };
  return visit(trigger);
}

function ofFact(symbol: string, truth: Truth, { flags }: Solved, data: SafetyData): HazardTest {
  const { yes, no } = data.flags.get(symbol)!;
  const proof = flags.get(symbol)!.provenBy;
  const open = proof ? `the spec says that ${no}, but ${proof} shows otherwise` : `it is not stated whether ${yes}`;
  return {
    statement: symbol,
    symbols: [symbol],
    truth,
    number: truth === 'unknown' ? '' : truth,
    threshold: '',
    says: truth === 'yes' ? yes : truth === 'no' ? no : open,
    missing: truth === 'unknown' ? [symbol] : [],
  };
}

const RELATIONS: Readonly<Record<string, readonly [sign: string, otherwise: string]>> = {
  less: ['<', '≥'],
  lessEqual: ['≤', '>'],
  greater: ['>', '≤'],
  greaterEqual: ['≥', '<'],
};

function ofComparison(tree: Tree, truth: Truth, solved: Solved): HazardTest {
  if (tree.kind !== 'call') throw new Error(`${show(tree)} compares nothing`);
  const [left, right] = tree.args as [Tree, Tree];
  const [sign, otherwise] = RELATIONS[tree.operation]!;
  const symbols = [...namesIn(tree)];
  const open = symbols.map((name) => solved.values.get(name)!).filter(({ state }) => state === 'unknown');
  const threshold = thresholdText(right, solved);
  const common = { statement: show(tree), symbols, truth, threshold };
  if (truth === 'unknown') {
    const missing = [...new Set(open.flatMap((value) => value.missing))];
    return { ...common, number: '', says: open.map((value) => unknownText(value)).join(', '), missing };
  }
  const number = numberText(left, right, solved);
  const name = equated(show(left), number, rangeOf(left, solved.known));
  return { ...common, number, says: `${name} ${truth === 'yes' ? sign : otherwise} ${threshold}`, missing: [] };
}

/** `V_touch = 58.8 V`, `V_touch 58.8 V or more`, `V_touch without limit`. */
const equated = (name: string, figure: string, { lo, hi }: Interval): string =>
  lo === hi && lo < Infinity ? `${name} = ${figure}` : `${name} ${figure}`;

/** At most three names that would settle it; more would be read by nobody, and the table lists them. */
function unknownText({ quantity, range, missing }: HazardValue): string {
  const bound = figureOf(quantity, range);
  const needs = missing.filter((name) => name !== quantity.tag && name !== quantity.symbol);
  const want = needs.length && needs.length <= 3 ? `, for want of ${needs.join(', ')}` : '';
  return `${quantity.symbol} is unknown${bound ? ` (${bound})` : ''}${want}`;
}

/** The left side as printed, with as many digits as it takes to stand on the right side of the threshold. */
function numberText(left: Tree, right: Tree, solved: Solved): string {
  const value = rangeOf(left, solved.known);
  const limit = rangeOf(right, solved.known);
  const name = [...namesIn(left)][0]!;
  return truthfulFigure(solved.values.get(name)!.quantity, value, limit);
}

function thresholdText(right: Tree, solved: Solved): string {
  if (right.kind === 'number') return typedFigure(right);
  const [name] = [...namesIn(right)];
  const value = rangeOf(right, solved.known);
  const known = figureOf(solved.values.get(name!)!.quantity, value);
  return known ? equated(show(right), known, value) : show(right);
}
