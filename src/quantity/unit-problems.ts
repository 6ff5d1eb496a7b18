import { knownUnits, unitNames } from './known-units.ts';
import { nearest } from './nearest.ts';
import { type Place, quoted, textError } from './place.ts';
import { prefixTable, unitTable } from './unit-table.ts';

/** What can be wrong with a unit, and how it is said. */
export const unitProblems = {
  unknown: (text: string, at: Place) =>
    textError(
      'unknown-unit',
      at,
      `the unit ${quoted(text, at)}`,
      'a unit such as V, kohm, µF or K/W',
      unitHint(text, at),
    ),

  missing: (text: string, at: Place) =>
    textError(
      'missing-unit',
      at,
      at.start === at.end ? 'nothing' : quoted(text, at),
      'a unit such as V, kohm, µF or K/W (1 for a pure number)',
    ),

  unexpected: (text: string, at: Place) => textError('unexpected', at, quoted(text, at), 'the end of the unit'),

  ambiguousDivision: (text: string, at: Place, readings: string) =>
    textError(
      'ambiguous-unit',
      at,
      `${quoted(text, at)}, which can be read two ways`,
      `brackets around what is divided by, such as ${readings}`,
    ),

  power: (text: string, at: Place) =>
    textError('bad-power', at, `the power ${quoted(text, at)}`, 'a power such as mm^2, mm² or Hz^0.5'),

  bracket: (text: string, at: Place) =>
    textError('open-bracket', at, quoted(text, at), 'a closing bracket, such as in W/(m K)'),

  splitDegree: (text: string, at: Place) =>
    textError('unknown-unit', at, `the unit ${quoted(text, at)}`, 'degC or °C in one word', 'Write degC.'),

  tooLong: (text: string, length: number) =>
    textError('too-long', { start: length, end: text.length }, `${text.length} characters`, `at most ${length}`),
};

/** Words that look like units here and are none, with what to do instead. */
const notUnits: Readonly<Record<string, string>> = {
  oz: 'Copper weight is not a length: write the foil as 35 um for 1 oz.',
  degF: 'Write temperatures in degC.',
  '°F': 'Write temperatures in degC.',
  AWG: 'A wire gauge is not a unit: write its area, such as 2.08 mm^2.',
  micron: 'Did you mean um?',
};

function unitHint(text: string, at: Place): string {
  const word = text.slice(at.start, at.end);
  const instead = Object.hasOwn(notUnits, word) ? notUnits[word] : undefined;
  if (instead) return instead;
  const prefix = prefixTable.find(({ typed }) => typed.some((letter) => letter === word));
  if (prefix) {
    const unit = prefix.power > 0 ? 'ohm' : 'F';
    return `${word} alone is a prefix: write its unit too, as in ${word}${unit}, or e${prefix.power} for a number.`;
  }
  const [first, second] = alternatives(word);
  if (!first) return `If ${quoted(text, at).slice(1, -1)} is a symbol, put an operator before it: 2 * x.`;
  return second ? `Did you mean ${first} or ${second}?` : `Did you mean ${first}?`;
}

function alternatives(word: string): string[] {
  const written = writtenOut(word);
  if (written) return [written];
  const close = nearest(word, unitNames(), 8);
  const distinct = close.filter((name, i) => i === close.findIndex((other) => sameUnit(name, other)));
  return distinct.length > 0 ? distinct : split(word);
}

const sameUnit = (a: string, b: string) => knownUnits.get(a)!.text === knownUnits.get(b)!.text;

/** `mVolt`, `millivolts` → `mV`. */
function writtenOut(word: string): string | undefined {
  const lower = word.toLowerCase();
  for (const [text, typed, , , prefixes, names] of unitTable) {
    for (const name of ` ${names}`.split(' ').filter((name) => name !== '')) {
      const ending = [name, `${name}s`].find((one) => lower.endsWith(one.toLowerCase()));
      if (!ending) continue;
      const before = word.slice(0, word.length - ending.length);
      const symbol = typed[0] ?? text;
      if (before === '') return symbol;
      const prefix = prefixTable.find(
        (one) => one.name === before.toLowerCase() || one.typed.some((t) => t === before),
      );
      if (prefix && prefixes.includes(prefix.text)) return prefix.typed.at(-1) + symbol;
    }
  }
  return undefined;
}

/** `Vs` → `V s`. */
function split(word: string): string[] {
  for (let i = 1; i < Math.min(word.length, 8); i++) {
    const [left, right] = [word.slice(0, i), word.slice(i)];
    if (knownUnits.has(left) && knownUnits.has(right)) return [`${left} ${right}`];
  }
  return [];
}
