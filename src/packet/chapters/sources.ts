import type { Block, Row, Table } from '../block.ts';
import { joined, link } from '../inline.ts';
import { numbering } from '../numbering.ts';
import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import type { Text } from '../text.ts';
import { checkLink, idLink } from '../trail.ts';
import { chapter } from './chapter.ts';

/** Who says so: for equations and checks, and for the numbers that went in. */
export function sources(review: Review): Chapter | undefined {
  const numbers = numbering(16);
  const rules = [...equationSources(review), ...checkSources(review)];
  const origins = inputOrigins(review);
  const warned = review.cautions.flatMap(({ id, sources: all = [] }) =>
    all.map((source): Cited => ({ source, by: [link(id, id)] })),
  );
  const blocks: Block[] = [
    ...(rules.length
      ? [table('sources-of-equations', numbers.table(), 'What equations and checks rest on.', 'Used in', merged(rules))]
      : []),
    ...(origins.length
      ? [
          table(
            'sources-of-inputs',
            numbers.table(),
            'Where the numbers that went in come from.',
            'Gives',
            merged(origins),
          ),
        ]
      : []),
    ...(warned.length
      ? [table('sources-of-cautions', numbers.table(), 'What the safety cautions rest on.', 'Behind', merged(warned))]
      : []),
  ];
  return blocks.length ? chapter('sources', blocks) : undefined;
}

interface Cited {
  readonly source: string;
  readonly by: Text;
}

function equationSources({ board, trail }: Review): Cited[] {
  return board.circuits.flatMap(({ results, sources: known }) =>
    results.flatMap(({ id, source }): Cited[] =>
      source ? [{ source: known[source] ?? source, by: [link(`(${trail.equations.get(id)})`, id)] }] : [],
    ),
  );
}

function checkSources({ board }: Review): Cited[] {
  return board.circuits.flatMap(({ checks, sources: known }) =>
    checks.flatMap(({ id, source }): Cited[] =>
      source ? [{ source: known[source] ?? source, by: [checkLink(id)] }] : [],
    ),
  );
}

/** What the specification names, and where a method has its usual values from. */
function inputOrigins({ board, trail }: Review): Cited[] {
  return board.circuits.flatMap(({ inputs }) =>
    inputs.flatMap(({ id, from, value }): Cited[] =>
      from && value.kind !== 'expression' ? [{ source: from, by: idLink(trail, id) }] : [],
    ),
  );
}

/** One row a source, in the order of first mention. */
function merged(cited: readonly Cited[]): Row[] {
  const bySource = new Map<string, Text[]>();
  for (const { source, by } of cited) bySource.set(source, [...(bySource.get(source) ?? []), by]);
  return [...bySource].map(([source, by]) => ({
    cells: [
      [source],
      // All of them: who holds a changed data sheet must find every number that it gave.
      joined(by, '; '),
    ],
  }));
}

function table(id: string, number: string, caption: string, used: string, rows: Row[]): Table {
  return {
    kind: 'table',
    id,
    number,
    caption: [caption],
    columns: [
      { head: ['Source'], align: 'left', width: 0.55 },
      { head: [used], align: 'left', face: 'sans' },
    ],
    groups: [{ rows }],
    wide: true,
  };
}
