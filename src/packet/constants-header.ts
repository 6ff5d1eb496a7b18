import type { Findings } from '../analysis/findings.ts';
import { type Constant, rangeEnds } from './constants.ts';

type Origin = Pick<
  Findings,
  'board' | 'revision' | 'revision_mark' | 'document' | 'title' | 'inputs_sha256' | 'tool' | 'issued' | 'status'
>;

/**
 * The constants as a C header (C99 and later, and C++): a macro for each, and for the ends of its range over all boards where
 * it has one. Numbers carry all digits of a double; `CONSTANT(x)` decides their type, float where nobody defines it before.
 * @example constantsHeader(findings, constants) // … #define V_PER_COUNT CONSTANT(0.012890625)
 */
export function constantsHeader(origin: Origin, constants: readonly Constant[]): string {
  const guard = `COPPERPLATE_${macro(origin.board)}_${macro(origin.revision)}_H`;
  return [
    comment(`${origin.document} revision ${origin.revision_mark}, ${origin.title}: constants for firmware`),
    comment(`Issued ${origin.issued}, ${origin.status}. Written by Copperplate ${origin.tool}; do not edit.`),
    `#ifndef ${guard}`,
    `#define ${guard}`,
    '',
    `#define COPPERPLATE_DOCUMENT ${text(origin.document)}`,
    `#define COPPERPLATE_REVISION ${text(origin.revision_mark)}`,
    comment('SHA-256 of the inputs: the beginning stands at the foot of every page of the packet'),
    `#define COPPERPLATE_INPUTS_SHA256 ${text(origin.inputs_sha256)}`,
    '',
    comment('Type of the numbers. Define it before including this file for another one.'),
    '#ifndef CONSTANT',
    '#define CONSTANT(x) x##f',
    '#endif',
    '',
    ...constants.flatMap((constant) => [...lines(constant), '']),
    `#endif ${comment(guard)}`,
    '',
  ].join('\n');
}

function lines(constant: Constant): string[] {
  const { name, says, circuit, text: equation, unit, value, min, max, whole } = constant;
  const what = says ? `${says}; ` : '';
  const varies = max > min;
  return [
    comment(`${what}${equation}, of ${circuit}, ${unit === '1' ? 'a plain number' : `in ${unit}`}`),
    `#define ${name} ${number(value, whole)}`,
    ...(varies
      ? rangeEnds.map(
          (end, i) => `#define ${name}${end} ${number(i ? max : min, whole && Number.isInteger(i ? max : min))}`,
        )
      : []),
  ];
}

/** All digits; with a point or an exponent, so that it is no integer. Negative numbers stand in brackets. */
function number(value: number, whole: boolean): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot stand in a header.`);
  const digits = String(Math.abs(value));
  const literal = whole ? integer(digits, value) : `CONSTANT(${/[.e]/.test(digits) ? digits : `${digits}.0`})`;
  return value < 0 ? `(-${literal})` : literal;
}

/** Beyond 32 767, the least an int may hold, a suffix says that it is long; beyond a long's, long long. */
const integer = (digits: string, value: number): string =>
  `${digits}${Math.abs(value) > 2147483647 ? 'LL' : Math.abs(value) > 32767 ? 'L' : ''}`;

const macro = (folder: string): string => folder.toUpperCase().replaceAll(/[^A-Z0-9]/g, '_');

const text = (words: string): string => `"${ascii(words).replaceAll(/["\\]/g, '\\$&').replaceAll('??', '?\\?')}"`;

/** On one line; nothing in it ends the comment, opens another or continues the line. */
const comment = (words: string): string =>
  `/* ${ascii(words).replaceAll(/\s+/g, ' ').replaceAll('*/', '* /').replaceAll('/*', '/ *').replaceAll('\\', '/').replaceAll('??', '? ?').trim()} */`;

const spelt: Readonly<Record<string, string>> = {
  Ω: 'ohm',
  µ: 'u',
  μ: 'u',
  '°': 'deg',
  '²': '^2',
  '³': '^3',
  '·': '*',
  '±': '+/-',
  '−': '-',
  '–': '-',
  '×': 'x',
  '≤': '<=',
  '≥': '>=',
  '\u00a0': ' ',
  '\u2009': '',
  θ: 'theta',
  Δ: 'delta ',
  η: 'eta',
  π: 'pi',
  ψ: 'psi',
  ω: 'omega',
  τ: 'tau',
  '’': "'",
};

/** Printable ASCII: not every compiler for a controller reads UTF-8. Line breaks stay for the comment to fold. */
const ascii = (words: string): string =>
  words.replaceAll(/[^ -~]/gu, (sign) => (/\s/.test(sign) ? ' ' : (spelt[sign] ?? '?')));
