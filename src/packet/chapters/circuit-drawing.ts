import type { Circuit, Input } from '../../spec/board.ts';
import type { DrawnPart } from '../../spec/drawing/drawing.ts';
import type { Drawing, DrawingLine, DrawingPart, DrawingRun } from '../drawing.ts';
import { figureText, plainTyped, typedUnitFor } from '../figures.ts';
import { strong } from '../inline.ts';
import type { Numbering } from '../numbering.ts';
import type { Review } from '../review.ts';
import { rangeText } from '../strips.ts';
import { symbolRuns } from '../symbol-runs.ts';
import type { Text } from '../text.ts';
import { counted, sentence } from '../words.ts';

/** What the circuit looks like, with the designators and values of this board and the nets that it takes from others. */
export function circuitDrawing(review: Review, circuit: Circuit, numbers: Numbering): Drawing | undefined {
  return circuit.drawing && drawnWith(circuit, (symbol) => shownOf(review, circuit, symbol), numbers.figure());
}

/** Text of what a symbol of the circuit is worth: `10 kΩ`, `23.4 V to 44.2 V`. */
export type Shown = (symbol: string) => string;

/** The drawing of a circuit with what `shown` says beside its symbols. */
export function drawnWith(circuit: Circuit, shown: Shown, number: string): Drawing {
  const drawing = circuit.drawing!;
  const parts = drawing.parts.map((part): DrawingPart => {
    const { kind, places, heavy, side } = part;
    return { symbol: kind, places, heavy, label: labelOf(shown, circuit, part), ...(side ? { side } : {}) };
  });
  return {
    kind: 'drawing',
    id: `drawing-${circuit.id}`,
    number,
    caption: captionOf(circuit),
    parts,
    alt: altOf(circuit, parts),
  };
}

function captionOf({ count, inputs, drawing }: Circuit): Text {
  const alike = count > 1 ? [` One of ${counted(count, 'alike', 'alike')}.`] : [];
  const shortened = inputs.filter(
    ({ refs, symbol }) => refs && shortRefs(refs).endsWith('…') && named(drawing!.parts, symbol),
  );
  const whole = shortened.flatMap(({ refs }): Text => [' ', strong(shortRefs(refs!)), ` stands for ${refs}.`]);
  return [sentence(drawing!.says), ...alike, ...whole];
}

const named = (parts: readonly DrawnPart[], symbol: string): boolean =>
  parts.some(({ symbols }) => symbols.includes(symbol));

/** Kinds at which a symbol is a quantity of the place, not a part that one can buy. */
const quantities: ReadonlySet<string> = new Set([
  'terminal',
  'current',
  'flow',
  'span',
  'guide',
  'trace',
  'pin',
  'note',
  'wire',
  'power',
  'supply',
]);

function labelOf(shown: Shown, circuit: Circuit, { kind, symbols, words }: DrawnPart): DrawingLine[] {
  const face = kind === 'terminal' || kind === 'supply' ? 'net' : 'value';
  const own: DrawingLine[] = words ? [[{ text: words, face }]] : [];
  const lines = quantities.has(kind)
    ? symbols.flatMap((symbol) => quantityLines(shown, circuit, symbol))
    : symbols.flatMap((symbol, i) => partLines(shown, circuit, symbol, i === 0));
  return [...own, ...lines];
}

/** Designator and symbol over the value; further symbols of one part take a line each. */
function partLines(shown: Shown, circuit: Circuit, symbol: string, first: boolean): DrawingLine[] {
  const refs = first ? inputOf(circuit, symbol)?.refs : undefined;
  const designator = refs ? shortRefs(refs) : undefined;
  const name = symbolRuns(symbol);
  const value = shown(symbol);
  const behind = run(`\u00a0${value}`, 'value');
  if (!designator) return first ? [name, [run(value, 'value')]] : [[...name, behind]];
  if (designator.length > roomBesideSymbol) return [[run(designator, 'designator')], [...name, behind]];
  return [[run(`${designator}\u00a0`, 'designator'), ...name], [run(value, 'value')]];
}

/** Letters of designators that leave room for the symbol in their line. */
const roomBesideSymbol = 5;

/** The symbol, and where it comes from when another circuit finds it, over its range. */
function quantityLines(shown: Shown, circuit: Circuit, symbol: string): DrawingLine[] {
  const input = inputOf(circuit, symbol);
  const source = input && referenceOf(input);
  const name = [...symbolRuns(symbol), ...(source ? [run(`\u00a0${source}`, 'net')] : [])];
  return [name, [run(shown(symbol), 'range')]];
}

const run = (text: string, face: DrawingRun['face']): DrawingRun => ({ text, face });

const inputOf = ({ inputs }: Circuit, symbol: string): Input | undefined =>
  inputs.find((input) => input.symbol === symbol);

/** The id that an input takes over unchanged: `pack.V_bat`. */
const referenceOf = ({ value }: Input): string | undefined =>
  value.kind === 'expression' && value.tree.kind === 'symbol' ? value.tree.name : undefined;

/** Long lists of designators by their first and last: `R41–R43`, or their first: `R14, …`. */
export function shortRefs(refs: string): string {
  const list = refs.split(/[\s,]+/);
  if (list.length === 1) return refs.replace('-', '–');
  const numbers = list.map((one) => Number(/\d+$/.exec(one)?.[0]));
  const rising = numbers.every((number, i) => number === numbers[0]! + i);
  if (list.length === 2) return list.join(' ');
  return rising ? `${list[0]}–${list.at(-1)}` : `${list[0]}, …`;
}

/** Typical value of a part, range of everything that has one. */
function shownOf(review: Review, circuit: Circuit, symbol: string): string {
  return textOf(review, `${circuit.id}.${symbol}`);
}

function textOf(review: Review, id: string): string {
  const result = review.results.get(id);
  const finding = review.findings.results[id];
  if (result && finding) return rangeText(finding.worst, result.unit);
  const input = review.inputs.get(id)!;
  if (input.value.kind === 'expression') {
    const source = referenceOf(input);
    if (source) return textOf(review, source);
    const typical = review.typical.get(id)!;
    return `typ ${figureText(plainTyped(typical, typedUnitFor([typical], input.unit)))}`;
  }
  const { min, typ, max, unit } = input.value.quantity;
  if (input.value.kind === 'condition' && max > min)
    return rangeText({ min: (min - unit.offset) / unit.scale, max: (max - unit.offset) / unit.scale }, unit);
  return figureText(plainTyped(typ, typedUnitFor([typ], unit)));
}

/** The caption, then every part that carries a label. */
function altOf({ drawing }: Circuit, parts: readonly DrawingPart[]): string {
  const shown = parts.filter(({ label }) => label.length);
  const named = shown.map(({ symbol, label }) => `${nouns[symbol] ?? symbol} ${label.map(lineText).join(', ')}`);
  return [sentence(drawing!.says), ...(named.length ? [`Drawn: ${named.join('; ')}.`] : [])].join(' ');
}

const nouns: Readonly<Record<string, string>> = {
  terminal: 'net',
  electrolytic: 'electrolytic capacitor',
  zener: 'suppressor or Zener diode',
  led: 'light-emitting diode',
  rtd: 'resistance thermometer',
  mosfet: 'transistor',
  span: 'distance',
  guide: 'line',
  trace: 'course',
  box: 'block',
  solid: 'body',
  supply: 'supply',
};

const lineText = (line: DrawingLine): string => line.map(({ text, low }) => (low ? `_${text}` : text)).join('');
