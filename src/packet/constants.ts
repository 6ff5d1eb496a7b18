import type { Findings } from '../analysis/findings.ts';
import type { Tree } from '../expression/tree.ts';
import type { Board } from '../spec/board.ts';
import { byId } from './by-id.ts';

/** One constant that firmware builds in. Numbers are in `unit`, at full precision. */
export interface Constant {
  /** Unique in the board, and a safe macro name: `V_PER_COUNT`, `PHASE_SHUNT_ZERO_COUNT`. */
  readonly name: string;
  /** `bus_sense.V_PER_COUNT` */
  readonly id: string;
  readonly circuit: string;
  readonly says: string;
  /** The equation as typed. */
  readonly text: string;
  readonly unit: string;
  readonly value: number;
  /** How far a board may lie from it; equal to `value` where nothing moves it. */
  readonly min: number;
  readonly max: number;
  /** Rounded by its own equation: a count, and no fraction of one. */
  readonly whole: boolean;
}

/** The constants of a board in the order of its circuits. */
export function constantsOf(board: Board, findings: Findings): Constant[] {
  const all = board.circuits.flatMap((circuit) => circuit.firmware.map((constant) => ({ circuit, constant })));
  const names = safeNames(all.map(({ circuit, constant }) => ({ circuit: circuit.id, symbol: constant.symbol })));
  return all.map(({ circuit, constant }, i) => {
    const { nominal, unit, worst } = findings.results[constant.id]!;
    return {
      name: names[i]!,
      id: constant.id,
      circuit: circuit.id,
      says: constant.says || saidOf(board, constant.tree),
      text: constant.text,
      unit,
      value: nominal,
      min: Math.min(worst.min, nominal),
      max: Math.max(worst.max, nominal),
      whole: Number.isSafeInteger(nominal) && rounded(board, constant.tree),
    };
  });
}

/** Ends of the names that a constant also takes for its range. */
export const rangeEnds = ['_LOWEST', '_HIGHEST'] as const;

/**
 * A macro name for each constant: its own where no other one has it, else with its circuit before it; never one that C or its
 * library has taken.
 */
export function safeNames(constants: readonly { readonly circuit: string; readonly symbol: string }[]): string[] {
  const often = new Map<string, number>();
  for (const { symbol } of constants) often.set(symbol, (often.get(symbol) ?? 0) + 1);
  const taken = new Set<string>();
  const family = (name: string): string[] => [name, ...rangeEnds.map((end) => name + end)];
  const free = (name: string): boolean => family(name).every((one) => !taken.has(one)) && !reserved(name);
  // Those that keep their own name come first, so that a prefix never pushes one aside.
  const order = constants.map((one, i) => ({ ...one, i })).sort((a, b) => often.get(a.symbol)! - often.get(b.symbol)!);
  const names: string[] = [];
  for (const { circuit, symbol, i } of order) {
    const long = `${spelt(circuit)}_${symbol}`;
    const wanted = often.get(symbol) === 1 && free(symbol) ? symbol : long;
    let name = wanted;
    for (let n = 2; !free(name); n++) name = `${wanted}_${n}`;
    for (const one of family(name)) taken.add(one);
    names[i] = name;
  }
  return names;
}

const greek: Readonly<Record<string, string>> = Object.fromEntries(
  'ALPHA BETA GAMMA DELTA EPSILON ZETA ETA THETA IOTA KAPPA LAMBDA MU NU XI OMICRON PI RHO _ SIGMA TAU UPSILON PHI CHI PSI OMEGA'
    .split(' ')
    .map((word, i) => [String.fromCharCode(0x391 + i), word]),
);

/** A circuit's name in the letters of a macro: `phase_shunt` → `PHASE_SHUNT`. */
const spelt = (circuit: string): string =>
  circuit
    .toUpperCase()
    .replaceAll(/[^A-Z0-9_]/g, (letter) => greek[letter] ?? '_')
    .replace(/^_+/, '');

/** Macro names of the C library (ISO/IEC 9899:2011, 7.31 and annex B) that look like a constant's. */
const reserved = (name: string): boolean =>
  /^(NULL|EOF|BUFSIZ|EXIT_(FAILURE|SUCCESS)|(INT|UINT|SIZE|PTRDIFF|WCHAR|WINT|CHAR|SCHAR|UCHAR|SHRT|USHRT|LONG|ULONG|LLONG|ULLONG|RAND|SIG_ATOMIC|FLT|DBL|LDBL|PATH|NAME|TMP|FILENAME|FOPEN|MB_LEN|MB_CUR)_[A-Z0-9_]*|E[A-Z0-9]+|LC_[A-Z]+|SIG[A-Z_]*|PRI[A-Z0-9]+|SCN[A-Z0-9]+|NAN|INFINITY|HUGE_VAL[FL]?|FP_[A-Z]+|FE_[A-Z]+|ATOMIC_[A-Z_]+|TIME_UTC|CLOCKS_PER_SEC|CONSTANT|COPPERPLATE_[A-Z0-9_]*)$/.test(
    name,
  );

/** What a constant that is a bare symbol is called where that symbol stands. */
function saidOf({ circuits }: Board, tree: Tree): string {
  if (tree.kind !== 'symbol') return '';
  const own = circuits.flatMap(({ inputs, results }) => [...inputs, ...results]).find(({ id }) => id === tree.name);
  return own?.says ?? '';
}

const rounding = new Set(['round', 'floor', 'ceil']);

/** Whether an equation ends by rounding, itself or in the result that it names. */
function rounded(board: Board, tree: Tree): boolean {
  if (tree.kind === 'call') return rounding.has(tree.operation);
  if (tree.kind !== 'symbol') return false;
  const own = treesOf(board).get(tree.name);
  return own !== undefined && rounded(board, own);
}

function treesOf({ circuits }: Board): Map<string, Tree> {
  const results = byId(circuits.flatMap((circuit) => circuit.results));
  const inputs = circuits.flatMap((circuit) => circuit.inputs);
  return new Map([
    ...[...results].map(([id, { tree }]) => [id, tree] as const),
    ...inputs.flatMap(({ id, value }) => (value.kind === 'expression' ? [[id, value.tree] as const] : [])),
  ]);
}
