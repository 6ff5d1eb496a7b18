import type { Published } from '../../published/check.ts';
import type { Tools } from '../../published/judge.ts';
import { capital } from '../words.ts';
import { knownWords } from './published-page.ts';
import { publishedRows } from './published-rows.ts';

/** The published checks as a table of the documents, for reading in the repository. */
export function publishedMarkdown(published: Published, tools: Tools): string {
  const themes = published.themes.flatMap(({ id, checks }) => [
    `## ${capital(id.replaceAll('-', ' '))}`,
    '',
    '| check | source | known | figure | expected | got | unit | difference | allowed |',
    '| --- | --- | --- | --- | ---: | ---: | --- | ---: | ---: |',
    ...checks.flatMap((check) =>
      publishedRows(check, tools).map(({ given, what, expected, got, unit, difference, allowed, inside }, i) => {
        const more = given.map(([symbol, value]) => `${symbol} ${value}`).join(', ');
        const opening = i ? ['', '', ''] : [`**${check.id}** ${check.title}`, check.source, knownWords[check.known]];
        const cells = [...opening, `${what}${more && i ? ` (${more})` : ''}`, expected, inside ? got : `**${got}**`];
        return `| ${[...cells, unit, difference, allowed].map(cell).join(' | ')} |`;
      }),
    ),
    '',
  ]);
  return ['# Published checks', '', ...intro, '', ...themes].join('\n');
}

const intro = [
  'Figures that somebody outside this project stands for, beside what the engine makes of them. This file is made from',
  '`src/published/data/` by `npx vitest run tests/published/markdown -u`, and a test holds it fresh; the same table, with all',
  'that is given, is a page of the site: `dist/handbook/published.html`.',
];

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
