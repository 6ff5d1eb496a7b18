import type { Findings, InputFinding, ResultFinding } from '../../src/analysis/findings.ts';
import { inUnit, printedUnit } from '../../src/analysis/units.ts';
import { parseExpression } from '../../src/expression/parse.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { cautionsOf } from '../../src/safety/cautions-of.ts';
import { loadSafety } from '../../src/site/safety-files.ts';
import type { Board, CautionDecision, Circuit, Input, Result } from '../../src/spec/board.ts';

export const data = loadSafety();

/**
 * What a board is known to have: facts (`has_pack: 'yes'`, `E_slope: 'infinite'`) stand in its spec, quantities (`E_cap: '1 J to 2 J'`) are
 * results of one circuit, `T_amb` is a condition. Names that are left out are unknown.
 */
export type Known = Readonly<Record<string, string>>;

export function boardWith(known: Known, decisions: readonly CautionDecision[] = []) {
  const isFact = ([name, text]: [string, string]) => data.flags.has(name) || text === 'infinite';
  const facts = Object.entries(known).filter(isFact);
  const quantities = Object.entries(known).filter((one) => !isFact(one) && one[0] !== 'T_amb');
  const results = Object.fromEntries(quantities.map(([name, text]) => [`given.${name}`, resultFinding(text)]));
  const board = {
    ...empty,
    safety: Object.fromEntries(facts),
    cautions: decisions,
    circuits: [circuitOf(quantities.map(([name, text]) => resultOf(name, text)))],
    conditions: known.T_amb === undefined ? [] : [conditionOf('T_amb', known.T_amb)],
  };
  const inputs = known.T_amb === undefined ? {} : { T_amb: inputFinding(known.T_amb) };
  return { board, findings: { results, inputs } satisfies Pick<Findings, 'results' | 'inputs'> };
}

/** The cautions of a board with just these. */
export function cautionsWith(known: Known, decisions: readonly CautionDecision[] = []) {
  const { board, findings } = boardWith(known, decisions);
  return cautionsOf(board, findings, data);
}

export const idsShown = (known: Known): string[] =>
  cautionsWith(known)
    .shown.map(({ id }) => id)
    .sort();

export const empty: Board = {
  name: 'bench',
  revision: 'rev-a',
  identity: {
    title: 'Bench',
    document: 'B-1',
    mark: 'A',
    issued: '2026-01-01',
    status: 'draft',
    purpose: 'To be tested.',
    language: 'en',
  },
  conditions: [],
  cases: [],
  target: 0,
  derating: [],
  circuits: [],
  totals: [],
  requirements: [],
  deviations: [],
  decisions: [],
  actions: [],
  bench: [],
  safety: {},
  cautions: [],
};

export const circuitOf = (results: readonly Result[], more: Partial<Circuit> = {}): Circuit => ({
  id: 'given',
  title: 'Given',
  count: 1,
  inputs: [],
  results,
  checks: [],
  validity: [],
  orders: [],
  firmware: [],
  testPoints: [],
  plots: [],
  sources: {},
  ...more,
});

function resultOf(name: string, text: string): Result {
  const { unit } = parseQuantity(text);
  const tree = parseExpression('0');
  return {
    id: `given.${name}`,
    symbol: name,
    says: name,
    unit,
    tree,
    text: '0',
    heat: false,
    stored: false,
    hazard: name,
  };
}

export function resultFinding(text: string): ResultFinding {
  const { unit, min, typ, max } = parseQuantity(text);
  const [lo, mid, hi] = [min, typ, max].map((si) => inUnit(si, unit)) as [number, number, number];
  return {
    unit: printedUnit(unit),
    nominal: mid,
    worst: { min: lo, max: hi, min_bound: lo, max_bound: hi, at_min: {}, at_max: {}, proven: true },
    rss: { min: lo, max: hi },
    spread: null,
    sensitivity: [],
  };
}

const conditionOf = (name: string, text: string): Input => {
  const quantity = parseQuantity(text);
  return {
    id: name,
    symbol: name,
    unit: quantity.unit,
    value: { kind: 'condition', quantity },
    rating: false,
    usual: false,
  };
};

function inputFinding(text: string): InputFinding {
  const { unit, min, typ, max } = parseQuantity(text);
  return {
    unit: printedUnit(unit),
    kind: 'condition',
    min: inUnit(min, unit),
    typ: inUnit(typ, unit),
    max: inUnit(max, unit),
  };
}
