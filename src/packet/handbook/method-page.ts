import type { SafetyData } from '../../safety/safety-data.ts';
import { methodBlock } from '../../spec/method-block.ts';
import type { Handbook, Method } from '../../spec/method-schema.ts';
import { placeTitle } from '../../spec/places.ts';
import type { Block } from '../block.ts';
import { drawnWith } from '../chapters/circuit-drawing.ts';
import { figureText, plain } from '../figures.ts';
import { name, strong } from '../inline.ts';
import type { Section } from '../packet.ts';
import type { Text } from '../text.ts';
import { counted, sentence } from '../words.ts';
import { cautionsTable } from './cautions.ts';
import { checksTable, validityTable } from './checks.ts';
import { equations } from './equations.ts';
import { mentionsDerating } from './mentions.ts';
import type { HandbookPage } from './page.ts';
import { sourcesTable } from './sources-table.ts';
import { symbolsTable } from './symbols-table.ts';
import { firmwareTable, testPointsTable } from './uses.ts';
import { examplePolicy, type Worked, workedExample } from './worked.ts';

/**
 * The page of a method: what it sizes, every equation with the numbers of its worked example, and what hangs on them. The
 * example goes the way of a board's circuit; nothing on the page is typed but the method's own file.
 * @throws Error when the example does not fit the method
 */
export function methodPage(method: Method, book: Handbook, safety: SafetyData): HandbookPage {
  const worked = workedExample(method, book);
  return {
    id: method.id,
    title: method.title,
    place: method.place,
    question: `${placeTitle(method.place)}: ${method.id}`,
    lead: [sentence(method.sizes)],
    aside: aside(worked, book),
    sections: sections(worked, safety),
  };
}

function aside({ method, circuit }: Worked, { policies }: Handbook): Text[] {
  const policy = policies.get(examplePolicy);
  return [
    [strong('Holds when:'), ` ${sentence(method['holds when'])}`],
    [sentence(`${counted(circuit.results.length, 'equation')}, ${counted(circuit.checks.length, 'check')}`)],
    ...(policy && mentionsDerating(circuit)
      ? [[`The example is worked with the derating policy `, name(policy.id), `: ${policy.title}.`]]
      : []),
    ...(method.example.from ? [[strong('Example from:'), ` ${sentence(method.example.from)}`]] : []),
  ];
}

function sections(worked: Worked, safety: SafetyData): Section[] {
  const { method } = worked;
  let tables = 1;
  const numbered = (make: (number: string) => Block | undefined): Block[] => {
    const block = make(String(tables + 1));
    if (!block) return [];
    tables++;
    return [block];
  };
  const parts: readonly (readonly [id: string, title: string, blocks: readonly Block[]])[] = [
    ['drawing', 'What it looks like', drawn(worked)],
    ['symbols', 'Symbols', [symbolsTable(worked)]],
    ['equations', 'Equations, with the example worked', equations(worked)],
    [
      'checks',
      'Checks',
      [...numbered((number) => checksTable(worked, number)), ...numbered((number) => validityTable(worked, number))],
    ],
    ['firmware', 'Firmware constants', numbered((number) => firmwareTable(worked, number))],
    ['test-points', 'Test points', numbered((number) => testPointsTable(worked, number))],
    ['cautions', 'Safety cautions', numbered((number) => cautionsTable(method, safety, number))],
    ['spec', 'In a spec', [{ kind: 'listing', text: `circuits:\n${methodBlock(method)}` }]],
    ['sources', 'Sources', numbered((number) => sourcesTable(worked, number))],
  ];
  return parts
    .filter(([, , blocks]) => blocks.length > 0)
    .map(([id, title, blocks], i) => ({ id: `section-${id}`, number: String(i + 1), title, aside: [], blocks }));
}

/** The method's drawing, with the values of the example beside its symbols. */
function drawn({ circuit, inputs, values }: Worked): Block[] {
  if (!circuit.drawing) return [];
  const shown = (symbol: string): string => {
    const id = `${circuit.id}.${symbol}`;
    const { unit } = (inputs.get(id) ?? circuit.results.find((result) => result.id === id))!;
    return figureText(plain(values.get(id)!, unit));
  };
  return [drawnWith(circuit, shown, '1')];
}
