import { parse } from 'yaml';
import type { PartKind } from './board.ts';
import type { Method } from './method-schema.ts';

/**
 * A circuit that uses a method, as text to paste below `circuits:`: every symbol with the number of the worked example and what
 * it is; those that have a usual value stand as comments. It builds as it stands on a board with the condition `T_amb`.
 */
export function methodBlock({ id, title, symbols, example }: Method): string {
  const entries = Object.entries(symbols);
  const given = entries.map(([name, symbol]) => {
    const value = example.given[name];
    const unit = symbol.unit === '1' ? '' : `, ${symbol.unit}`;
    return value === undefined || value === symbol.usual
      ? { line: `# ${name}: ${scalar(symbol.usual!)}`, says: `usual; ${symbol.says}${unit}` }
      : { line: `${name}: ${scalar(value)}`, says: `${symbol.says}${unit}` };
  });
  const width = Math.max(...given.map(({ line }) => line.length));
  const refs = designators(entries.flatMap(([name, { part, rating }]) => (part && !rating ? [[name, part]] : [])));
  return [
    `  ${id.replaceAll('-', '_')}:`,
    `    title: ${scalar(title)}`,
    `    method: ${id}`,
    ...(refs.length ? [`    refs: { ${refs.join(', ')} }`] : []),
    '    given:',
    ...given.map(({ line, says }) => `      ${line.padEnd(width)}  # ${says}`),
  ].join('\n');
}

/** A text as it must be typed so that YAML gives it back. */
function scalar(text: string): string {
  try {
    const read: unknown = parse(`key: ${text}`, { schema: 'failsafe' });
    if ((read as Record<string, unknown>).key === text) return text;
  } catch {
    // It cannot stand plainly.
  }
  return JSON.stringify(text);
}

/** Class letters of reference designations after IEEE 315 (from memory). */
const letters: Readonly<Record<PartKind, string>> = {
  resistor: 'R',
  capacitor: 'C',
  inductor: 'L',
  mosfet: 'Q',
  diode: 'D',
  ic: 'U',
  fuse: 'F',
  connector: 'J',
  wire: 'W',
  crystal: 'Y',
  thermistor: 'RT',
  copper: 'TR',
  heatsink: 'HS',
  motor: 'M',
  battery: 'BT',
  switch: 'S',
  sensor: 'B',
};

/** `R_top: R1, R_bot: R2, C_f: C1` */
function designators(parts: readonly (readonly [string, PartKind])[]): string[] {
  const counts = new Map<string, number>();
  return parts.map(([name, part]) => {
    const letter = letters[part];
    const count = (counts.get(letter) ?? 0) + 1;
    counts.set(letter, count);
    return `${name}: ${letter}${count}`;
  });
}
