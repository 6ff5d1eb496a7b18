import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Loader } from 'astro/loaders';
import { find } from '../analysis/find.ts';
import type { Block } from '../packet/block.ts';
import type { Reviewed } from '../packet/by-id.ts';
import { guideFigures } from '../packet/guide/figures.ts';
import { showProblems } from '../spec/problem.ts';
import { readSpec } from '../spec/read-spec.ts';
import { version } from './version.ts';

const examples = ['divider', 'words', 'load'] as const;

/** Specs of the guide's examples by name, as they are shown and calculated. */
export const guideExamples = (): Record<(typeof examples)[number], string> => ({
  divider: exampleText('divider'),
  words: exampleText('words'),
  load: exampleText('load'),
});

const exampleText = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../guide/${name}.yaml`, import.meta.url)), 'utf8');

/** Calculates an example as a board. Throws an Error with the problems in words when it does not build. */
export function calculatedExample(name: string, text: string): Reviewed {
  const book = { methods: new Map(), policies: new Map() };
  const place = { file: `src/guide/${name}.yaml`, board: name, revision: 'a' };
  const { board, problems } = readSpec(text, place, book);
  if (!board) throw new Error(showProblems(problems));
  return { board, findings: find(board, { seed: 1, trials: 100_000, digest: '', tool: version }) };
}

/** Loads what the guide shows into the store: a figure or a listing for each name. */
export function guideLoader(): Loader {
  return {
    name: 'copperplate-guide',
    async load({ store }) {
      store.clear();
      const texts = guideExamples();
      const boards = {
        divider: calculatedExample('divider', texts.divider),
        words: calculatedExample('words', texts.words),
        load: calculatedExample('load', texts.load),
      };
      const listings = examples.map((name): [string, Block] => [
        name,
        { kind: 'listing', text: texts[name].trimEnd() },
      ]);
      const figures = guideFigures(boards).map((figure): [string, Block] => [figure.id, figure]);
      for (const [id, block] of [...listings, ...figures]) store.set({ id, data: { ...block } });
    },
  };
}
