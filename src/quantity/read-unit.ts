import { compose, type Factor } from './compose-unit.ts';
import { knownUnits } from './known-units.ts';
import type { Token } from './lex.ts';
import { readPower } from './read-power.ts';
import type { Unit } from './unit.ts';
import { unitProblems } from './unit-problems.ts';

/** What is being read: the text, for messages, and its tokens. */
export interface Source {
  readonly text: string;
  readonly tokens: readonly Token[];
}

/** A unit, and the index of the token after it. */
export interface UnitRead {
  readonly unit: Unit;
  readonly next: number;
}

/** Words that follow a unit and are none. */
export const keywords: ReadonlySet<string> = new Set([
  ...['to', 'typ', 'mean', 'sd', 'age'],
  ...['normal', 'uniform', 'triangular'],
]);

/** Whether a unit begins at this token: a word, a root, or `1/K` and `/K`. */
export function startsUnit({ tokens }: Source, at: number): boolean {
  const token = tokens[at];
  if (!token) return false;
  if (token.kind === 'word') return !keywords.has(token.text);
  if (token.text === '√') return true;
  const slash = token.text === '1' ? at + 1 : at;
  const after = tokens[slash + 1];
  return tokens[slash]?.text === '/' && (after?.kind === 'word' || after?.text === '(' || after?.text === '√');
}

/**
 * Reads the longest unit that begins at a token for which `startsUnit` holds: factors joined by space, `*`, `·`, and
 * divided by one factor or a bracket. What follows a division without brackets is refused, as ISO 80000-1 asks.
 * @throws TextError with the code `unknown-unit`, `ambiguous-unit`, `bad-power` or `open-bracket`
 */
export function readUnit(source: Source, start: number): UnitRead {
  const { tokens } = source;
  let at = tokens[start]!.text === '1' ? start + 1 : start;
  const factors: Factor[] = [];
  if (tokens[at]!.text !== '/') {
    const product = readProduct(source, at);
    factors.push(...product.factors);
    at = product.next;
  }
  while (tokens[at]?.text === '/' && divides(source, at)) {
    const divisor = readDivisor(source, at + 1);
    factors.push(...divisor.factors.map(({ unit, power }) => ({ unit, power: -power })));
    at = divisor.next;
    if (continues(source, at)) throw ambiguous(source, start, at);
  }
  return { unit: compose(factors), next: at };
}

interface FactorsRead {
  readonly factors: readonly Factor[];
  readonly next: number;
}

const divides = ({ tokens }: Source, slash: number): boolean => {
  const after = tokens[slash + 1];
  return (after?.kind === 'word' && !keywords.has(after.text)) || after?.text === '(' || after?.text === '√';
};

/** Whether another factor follows: a sign of multiplication and a unit, or a known unit set beside. */
function continues(source: Source, at: number): boolean {
  const token = source.tokens[at];
  if (!token) return false;
  if (token.text === '*' || token.text === '·') return source.tokens[at + 1]?.kind === 'word';
  const apart = token.spaced || source.tokens[at - 1]?.kind !== 'word';
  return (
    apart && (token.text === '√' || token.text === 'sqrt' || (token.kind === 'word' && knownUnits.has(token.text)))
  );
}

function readProduct(source: Source, start: number): FactorsRead {
  const first = readFactor(source, start);
  const factors = [...first.factors];
  let at = first.next;
  while (continues(source, at)) {
    const signed = source.tokens[at]!.kind === 'mark' && source.tokens[at]!.text !== '√';
    const factor = readFactor(source, signed ? at + 1 : at);
    factors.push(...factor.factors);
    at = factor.next;
  }
  return { factors, next: at };
}

function readDivisor(source: Source, start: number): FactorsRead {
  if (source.tokens[start]!.text !== '(') return readFactor(source, start);
  const inside = readProduct(source, start + 1);
  return { ...inside, next: closing(source, inside.next, start) };
}

function readFactor(source: Source, at: number): FactorsRead {
  const { text, tokens } = source;
  const token = tokens[at];
  if (token?.text === '√') return rooted(readFactor(source, at + 1));
  if (token?.text === 'sqrt' && tokens[at + 1]?.text === '(') {
    const inside = readFactor(source, at + 2);
    return rooted({ ...inside, next: closing(source, inside.next, at + 1) });
  }
  if (token?.kind !== 'word') throw unitProblems.missing(text, token ?? { start: text.length, end: text.length });
  const unit = knownUnits.get(token.text);
  if (!unit) throw unitProblems.unknown(text, token);
  const following = tokens[at + 1];
  if (unit.text === '°' && (following?.text === 'C' || following?.text === 'F'))
    throw unitProblems.splitDegree(text, { start: token.start, end: following.end });
  const { power, next } = readPower(source, at + 1);
  return { factors: unit.text.split('·').map((name) => ({ unit: knownUnits.get(name)!, power })), next };
}

const rooted = ({ factors, next }: FactorsRead): FactorsRead => ({
  factors: factors.map(({ unit, power }) => ({ unit, power: power / 2 })),
  next,
});

function closing({ text, tokens }: Source, at: number, opening: number): number {
  if (tokens[at]?.text !== ')') throw unitProblems.bracket(text, { start: tokens[opening]!.start, end: text.length });
  return at + 1;
}

function ambiguous({ text, tokens }: Source, start: number, at: number) {
  const slashes = tokens.slice(start, at).filter((token) => token.text === '/').length;
  const slash = tokens.findIndex((token, i) => i >= start && token.text === '/');
  const joined = tokens[tokens[at]!.kind === 'mark' ? at + 1 : at]!;
  const place = { start: tokens[start]!.start, end: joined.end };
  if (slashes > 1) return unitProblems.ambiguousDivision(text, place, 'W/(m K)');
  const left = text.slice(tokens[start]!.start, tokens[slash]!.start).trim();
  const divisor = text.slice(tokens[slash + 1]!.start, tokens[at - 1]!.end);
  const readings = `${left}/(${divisor} ${joined.text}) or ${left} ${joined.text}/${divisor}`;
  return unitProblems.ambiguousDivision(text, place, readings);
}
