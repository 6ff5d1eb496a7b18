import type { Method } from '../../spec/method-schema.ts';
import { byPlace, placeTitle } from '../../spec/places.ts';
import type { Row, Table } from '../block.ts';
import { sans, serif, wide } from '../chapters/columns.ts';
import { link, method as methodName } from '../inline.ts';
import type { Section } from '../packet.ts';
import { counted, sentence, tallied } from '../words.ts';
import type { HandbookPage } from './page.ts';

const columns = [wide(serif('Method'), 0.3), wide(sans('In a spec'), 0.22), wide(serif('What it sizes'), 0.48)];

/** The first page: every method by where it sits on the board. */
export function indexPage(methods: readonly Method[]): HandbookPage {
  const placed = byPlace(methods);
  return {
    id: 'index',
    title: 'Handbook',
    question: 'Which method sizes this part of the board?',
    lead: [
      `${tallied(methods.length, 'method')} by where they sit on the board, from the pack to the copper. Each page gives symbols, equations with their sources, checks with their reasons, and an example worked by the same engine that works out a packet.`,
    ],
    aside: [
      ['Looking for a letter? See the ', link('index of symbols', '/handbook/symbols'), '.'],
      ['Shares of ratings stand under ', link('derating policies', '/handbook/derating'), '.'],
      [
        'Figures from elsewhere that the methods are held against are ',
        link('published checks', '/handbook/published'),
        '.',
      ],
    ],
    sections: placed.map(([place, here], i): Section => {
      const rows = here.map(
        (method): Row => ({
          cells: [[link(method.title, `/handbook/${method.id}`)], [methodName(method.id)], [sentence(method.sizes)]],
        }),
      );
      const table: Table = {
        kind: 'table',
        id: `table-${place}`,
        number: String(i + 1),
        caption: [`${placeTitle(place)}: ${counted(here.length, 'method')}.`],
        columns,
        groups: [{ rows }],
        wide: true,
      };
      return { id: `place-${place}`, number: String(i + 1), title: placeTitle(place), aside: [], blocks: [table] };
    }),
  };
}
