import { methodBlock } from '../spec/method-block.ts';
import type { Method } from '../spec/method-schema.ts';
import { placeTitle } from '../spec/places.ts';
import { textTable } from './text-table.ts';
import { wrapped } from './wrapped.ts';

/** A method as an engineer reads it before using it, and a circuit to paste; `width` columns wide where its words can be wrapped. */
export function methodSheet(method: Method, width: number): string {
  const { id, title, place, sizes, equations, checks, valid, firmware, sources, example } = method;
  const line = (text: string) => wrapped(text, width, '  ', '    ');
  const under = (text: string) => wrapped(text, width, '      ');
  const held = ([name, { holds, because }]: [string, { holds: string; because: string }]) =>
    `${line(`${name}: ${holds}`)}\n${under(`because ${because}`)}`;
  return [
    `${id}: ${title} (${placeTitle(place)})`,
    wrapped(sizes, width),
    wrapped(`Holds when: ${method['holds when']}`, width),
    section('Symbols', [symbolTable(method)]),
    section(
      'Equations',
      Object.entries(equations ?? {}).map(
        ([name, { is, unit, says, source }]) =>
          `${line(`${name} = ${is}`)}\n${under(`${says}${unit === '1' ? '' : `, in ${unit}`}${source ? ` [${source}]` : ''}`)}`,
      ),
    ),
    section('Checks', Object.entries(checks ?? {}).map(held)),
    section('Holds only while', Object.entries(valid ?? {}).map(held)),
    section(
      'For firmware',
      Object.entries(firmware ?? {}).map(([name, { is, unit }]) =>
        line(`${name} = ${is}${unit ? `, in ${unit}` : ''}`),
      ),
    ),
    section(
      'Worked example, with the numbers below',
      Object.entries(example.gives).map(([name, value]) => line(`${name} = ${value}`)),
    ),
    section(
      'Sources',
      Object.entries(sources).map(([key, source]) => line(`[${key}] ${source}`)),
    ),
    section('To paste below `circuits:`', [methodBlock(method)]),
  ]
    .filter((part) => part !== '')
    .join('\n');
}

const section = (title: string, lines: readonly string[]): string =>
  lines.length ? `\n${title}\n${lines.join('\n')}` : '';

function symbolTable({ symbols }: Method): string {
  const rows = Object.entries(symbols).map(([name, { says, unit, usual, part, rating }]) => [
    `  ${name}`,
    unit === '1' ? '' : unit,
    [says, ...(part ? [part] : []), ...(rating ? ['rating'] : [])].join(', '),
    usual ?? 'must be given',
  ]);
  return textTable(['  symbol', 'unit', 'what it is', 'usual'], rows);
}
