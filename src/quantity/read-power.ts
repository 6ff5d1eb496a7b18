import type { Source } from './read-unit.ts';
import { unitProblems } from './unit-problems.ts';

/** A power after a factor: `²`, `^2`, `^-0.5`, or a digit set close as in `mm2`. */
export function readPower(source: Source, at: number): { power: number; next: number } {
  const { text, tokens } = source;
  const token = tokens[at];
  if (token?.kind === 'power') return { power: checkedPower(source, token.text, at, at + 1), next: at + 1 };
  if (token?.kind === 'number' && !token.spaced && /^[23]$/.test(token.text))
    return { power: Number(token.text), next: at + 1 };
  if (token?.text !== '^') return { power: 1, next: at };
  const sign = tokens[at + 1]?.text === '-' ? '-' : '';
  const number = tokens[at + 1 + sign.length];
  const next = at + 2 + sign.length;
  if (number?.kind !== 'number') throw unitProblems.power(text, { start: token.start, end: (number ?? token).end });
  return { power: checkedPower(source, sign + number.text, at, next), next };
}

function checkedPower({ text, tokens }: Source, digits: string, from: number, to: number): number {
  const power = Number(digits);
  const sound = power !== 0 && Math.abs(power) <= 9 && digits.length <= 6;
  if (!sound) throw unitProblems.power(text, { start: tokens[from]!.start, end: tokens[to - 1]!.end });
  return power;
}
