import type { KnownBy, Published, PublishedCheck } from '../../published/check.ts';
import type { Tools } from '../../published/judge.ts';
import type { Row, RowGroup, Table } from '../block.ts';
import { right, sans, serif, unit, wide } from '../chapters/columns.ts';
import { dash, joined, name, strong } from '../inline.ts';
import type { Section } from '../packet.ts';
import type { Text } from '../text.ts';
import { capital, sentence, tallied } from '../words.ts';
import type { HandbookPage } from './page.ts';
import { type PublishedRow, publishedRows } from './published-rows.ts';

export const knownWords: Readonly<Record<KnownBy, string>> = {
  read: 'read',
  memory: 'from memory',
  recomputed: 'recomputed',
  'common practice': 'common practice',
};

const columns = [
  wide(serif('Given'), 0.34),
  wide(sans('Figure'), 0.16),
  wide(right('Expected'), 0.12),
  wide(right('Got'), 0.12),
  wide(unit('unit'), 0.06),
  wide(right('Difference'), 0.1),
  wide(right('Allowed'), 0.1),
];

interface Worked {
  readonly check: PublishedCheck;
  readonly rows: readonly PublishedRow[];
}

/** Figures that somebody outside this project stands for, each beside what the engine makes of it when the site is built. */
export function publishedPage(published: Published, tools: Tools): HandbookPage {
  const themes = published.themes.map(({ id, checks }) => ({
    id,
    worked: checks.map((check): Worked => ({ check, rows: publishedRows(check, tools) })),
  }));
  const rows = themes.flatMap(({ worked }) => worked.flatMap((one) => one.rows));
  const missed = rows.filter(({ inside }) => !inside).length;
  return {
    id: 'published',
    title: 'Published checks',
    question: 'Does the engine find what others have printed?',
    lead: [
      `${tallied(rows.length, 'figure')} from standards, data sheets and textbooks, worked out by the engine when these pages were built. `,
      missed ? strong(`${tallied(missed, 'figure')} outside what is allowed.`) : 'All lie inside what is allowed.',
    ],
    aside: [
      [strong('Read:'), ' the passage was seen in a copy of the source.'],
      [strong('From memory:'), ' a well-known value, recalled; check it against the source before leaning on it.'],
      [strong('Recomputed:'), ' worked out from the equation named, apart from this project.'],
      [
        strong('Allowed'),
        ' is half a unit of the last digit that the source prints; for simulated boards, the sampling error of the run.',
      ],
    ],
    sections: [
      ...themes.map(({ id, worked }, i) => section(id, worked, i + 1)),
      notCovered(published, themes.length + 1),
    ],
  };
}

function section(id: string, worked: readonly Worked[], position: number): Section {
  const notes = worked.flatMap(({ check }): Text[] =>
    check.notes ? [[name(check.id), `: ${sentence(check.notes)}`]] : [],
  );
  const table: Table = {
    kind: 'table',
    id: `table-${id}`,
    number: String(position),
    caption: [
      'What is given, what the source prints, and what came out. A row repeats only what differs from the one above.',
    ],
    columns,
    groups: worked.map(group),
    wide: true,
    ...(notes.length ? { foot: joined(notes, ' ') } : {}),
  };
  return {
    id: `theme-${id}`,
    number: String(position),
    title: capital(id.replaceAll('-', ' ')),
    aside: [],
    blocks: [table],
  };
}

const group = ({ check, rows }: Worked): RowGroup => ({
  title: `${check.id}: ${check.title}. ${check.source} (${knownWords[check.known]})${'method' in check ? `; ${check.method}` : ''}`,
  rows: rows.map(row),
});

function row({ given, what, expected, got, unit: printed, difference, allowed, inside }: PublishedRow): Row {
  return {
    cells: [
      given.length
        ? joined(
            given.map(([symbol, value]): Text => [name(symbol), ` ${value}`]),
            ', ',
          )
        : dash,
      [name(what)],
      [expected],
      inside ? [got] : [strong(got)],
      printed ? [printed] : dash,
      [difference],
      [allowed],
    ],
  };
}

function notCovered({ notCovered: cases }: Published, position: number): Section {
  const rows = Object.entries(cases).map(([id, why]): Row => ({ cells: [[name(id)], [why]] }));
  return {
    id: 'theme-not-held',
    number: String(position),
    title: 'Gathered, and held against nothing',
    aside: [],
    blocks: [
      {
        kind: 'table',
        id: 'table-not-held',
        number: String(position),
        caption: ['Published figures that no method or function here answers to, and why.'],
        columns: [wide(sans('Check'), 0.16), wide(serif('Why not'), 0.84)],
        groups: [{ rows }],
        wide: true,
      },
    ],
  };
}
