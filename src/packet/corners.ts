import type { Corner } from '../analysis/findings.ts';
import { same } from '../quantity/dimension.ts';
import { kinds } from '../quantity/kinds.ts';
import type { Input } from '../spec/board.ts';
import { figureText, plainTyped, toSi } from './figures.ts';
import { joined, math } from './inline.ts';
import type { Review } from './review.ts';
import { idTex } from './symbols.ts';
import type { Inline, Text } from './text.ts';
import { inWords } from './words.ts';

/** Where a variable stands in a corner. */
export type End = 'low' | 'high' | 'between';

interface Standing {
  readonly id: string;
  readonly input: Input;
  readonly value: number;
  readonly end: End;
}

/** Letters under which the conditions of a corner are summed up in tables. */
const letters = [
  ['V', kinds.voltage.of],
  ['I', kinds.current.of],
  ['T', kinds.temperature.of],
] as const;
export const cornerLetters = letters.map(([letter]) => letter);

/**
 * A corner as arrows under V, I and T: `V↑`; both arrows where conditions of one kind stand at different ends, or between
 * them; a dot where none has a part.
 */
export function cornerArrows(review: Review, corner: Corner, caseName?: string): Text[] {
  const conditions = standings(review, corner, caseName).filter(({ input }) => input.value.kind === 'condition');
  return letters.map(([letter, dimension]): Text => {
    const ends = new Set(conditions.filter(({ input }) => same(input.unit.dimension, dimension)).map(({ end }) => end));
    if (ends.size === 0) return ['·'];
    const arrow = ends.size > 1 || ends.has('between') ? '↑↓' : ends.has('high') ? '↑' : '↓';
    return [`${letter}${arrow}`];
  });
}

/** The conditions of a corner with their values: I_ph = 70 A, T_amb = 45 °C. Empty where no condition has a part. */
export function conditionsText(review: Review, corner: Corner): Text {
  const conditions = standings(review, corner).filter(({ input }) => input.value.kind === 'condition' && moves(input));
  return joined(
    conditions.map(
      ({ id, input, value }): Text => [
        math(idTex(id)),
        ` = ${figureText(plainTyped(toSi(value, input.unit), input.unit))}`,
      ],
    ),
    ', ',
  );
}

const moves = ({ value }: Input): boolean => value.kind !== 'expression' && value.quantity.min < value.quantity.max;

/** Parts of a corner by the end at which they stand: "high: R_bot, V_fs; low: R_top". At most six are named. */
export function partsText(review: Review, corner: Corner): Text {
  const parts = standings(review, corner).filter(({ input }) => input.value.kind === 'part');
  const named = parts.slice(0, 6);
  const at = (end: End): Text =>
    joined(
      named.filter((part) => part.end === end).map((part): Text => [partSymbol(part.id)]),
      ', ',
    );
  const groups = (['high', 'low', 'between'] as const).flatMap((end): Text[] =>
    at(end).length ? [[`${words[end]}: `, ...at(end)]] : [],
  );
  const more = parts.length - named.length;
  return [...joined(groups, '; '), ...(more > 0 ? [`; and ${inWords(more)} more`] : [])];
}

const words: Readonly<Record<End, string>> = { high: 'high', low: 'low', between: 'inside their range' };

/** Drift and ageing of a part are named after it: R_bot (drift). */
function partSymbol(id: string): Inline {
  const [input, what] = id.split(' ') as [string, string?];
  return math(what && what !== 'value' ? `${idTex(input)}\\,\\text{(${what})}` : idTex(input));
}

function standings(review: Review, corner: Corner, caseName?: string): Standing[] {
  return Object.entries(corner).flatMap(([id, value]): Standing[] => {
    const input = review.inputs.get(id.split(' ')[0]!);
    // The second and third of several alike stand where the first does.
    if (!input || input.value.kind === 'expression' || id.includes('#')) return [];
    return [{ id, input, value, end: endOf(review, id, input, value, caseName) }];
  });
}

function endOf(review: Review, id: string, input: Input, value: number, caseName: string | undefined): End {
  const { lo, hi } = rangeOf(review, id, input, caseName);
  const at = id.includes(' ') ? value : toSi(value, input.unit);
  const blur = 1e-9 * (hi - lo);
  return at <= lo + blur ? 'low' : at >= hi - blur ? 'high' : 'between';
}

function rangeOf(
  review: Review,
  id: string,
  { value }: Input,
  caseName: string | undefined,
): { lo: number; hi: number } {
  if (value.kind === 'expression') throw new Error(`${id} follows from others and has no range`);
  const { quantity } = value;
  if (id.endsWith(' drift')) return ends(quantity.drift ?? quantity.driftAbsolute ?? { min: 0, max: 0 });
  if (id.endsWith(' ageing')) return ends(quantity.ageing ?? { min: 0, max: 0 });
  if (id.endsWith(' tracking')) return ends(value.kind === 'part' && value.tracks ? value.tracks.within : quantity);
  return ends(review.board.cases.find(({ name }) => name === caseName)?.ranges.get(id) ?? quantity);
}

const ends = ({ min, max }: { min: number; max: number }) => ({ lo: min, hi: max });
