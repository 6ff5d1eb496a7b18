import type { Board, Input } from '../spec/board.ts';
import { mentioned } from '../spec/names.ts';
import { effectsOf } from './assumption-effect.ts';
import type { JudgedCheck } from './check-finding.ts';
import type { AssumptionEffect, AssumptionFinding } from './findings.ts';
import type { Model } from './model.ts';

/**
 * Every value that nobody guarantees: usual values that were taken, and what the spec itself calls typical or assumed; what
 * may cost the largest part of a margin first.
 */
export function assumptionsOf(board: Board, model: Model, judged: readonly JudgedCheck[]): AssumptionFinding[] {
  const used = usedNames(board);
  const factors = board.derating.filter(({ id, usual }) => usual && used.has(id));
  const assumed = [...factors, ...board.circuits.flatMap(({ inputs }) => inputs)].flatMap((input) => {
    const basis = basisOf(input);
    return basis ? [{ input, basis }] : [];
  });
  const criteria = criteriaOf(board);
  const real = assumed.filter(({ input }) => !criteria.has(input.id)).map(({ input }) => input);
  const effects = new Map(effectsOf(board, model, judged, real).map((effect, i) => [real[i]!.id, effect]));
  const margins = new Map(judged.map(({ from, margin }) => [from.check.id, margin]));
  const eats = (effect: AssumptionEffect | null): number =>
    effect ? effect.margin / Math.max(0.01, margins.get(effect.check) ?? 0) : 0;
  return assumed
    .map(({ input, basis }) => ({
      symbol: input.id,
      value: valueText(input),
      basis,
      effect: effects.get(input.id) ?? null,
      ...(criteria.has(input.id) ? { criterion: true as const } : {}),
    }))
    .sort((a, b) => eats(b.effect) - eats(a.effect));
}

function basisOf({ usual, basis }: Input): AssumptionFinding['basis'] | undefined {
  if (usual) return 'usual value';
  return basis === 'typical' || basis === 'assumed' ? basis : undefined;
}

/**
 * Values that are the limit of a check and nothing else, and belong to no part: what was agreed, such as 60 V, and not how
 * something is.
 */
function criteriaOf({ circuits, totals }: Board): Set<string> {
  const limits = new Set<string>();
  const elsewhere = new Set<string>();
  for (const { tree } of totals) mentioned(tree, elsewhere);
  for (const { results, inputs, firmware, checks, validity } of circuits) {
    for (const { tree } of [...results, ...firmware]) mentioned(tree, elsewhere);
    for (const { value } of inputs) if (value.kind === 'expression') mentioned(value.tree, elsewhere);
    for (const { left, right } of [...checks, ...validity]) {
      mentioned(left, elsewhere);
      mentioned(right, right.kind === 'symbol' ? limits : elsewhere);
    }
  }
  const bought = new Set(
    circuits.flatMap(({ inputs }) => inputs.flatMap(({ id, part, rating }) => (part || rating ? [id] : []))),
  );
  return new Set([...limits].filter((id) => !elsewhere.has(id) && !bought.has(id)));
}

/** Every id that some equation or check mentions. */
function usedNames({ circuits }: Board): Set<string> {
  const used = new Set<string>();
  for (const { inputs, results, checks, validity } of circuits) {
    for (const { tree } of results) mentioned(tree, used);
    for (const { value } of inputs) if (value.kind === 'expression') mentioned(value.tree, used);
    for (const { left, right } of [...checks, ...validity]) for (const side of [left, right]) mentioned(side, used);
  }
  return used;
}

const valueText = ({ value }: Input): string => (value.kind === 'expression' ? value.text : value.quantity.text);
