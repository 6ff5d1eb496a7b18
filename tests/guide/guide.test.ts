import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { find } from '../../src/analysis/find.ts';
import { undefinedResults } from '../../src/analysis/undefined-results.ts';
import { guideFigures } from '../../src/packet/guide/figures.ts';
import type { Histogram } from '../../src/packet/plot.ts';
import { calculatedExample, guideExamples } from '../../src/site/guide.ts';
import { readOptions } from '../../src/site/options.ts';
import { readBench } from '../../src/spec/bench/read-bench.ts';
import { readNotes } from '../../src/spec/notes/read-notes.ts';
import { showProblems } from '../../src/spec/problem.ts';
import { readSpec } from '../../src/spec/read-spec.ts';
import { runCommand } from '../commands/run-command.ts';
import { handbook } from '../handbook.ts';
import { commandsIn, fenced, type GuidePage, guidePages, languages } from './blocks.ts';

type Keys = Record<string, Record<string, unknown> | unknown[]>;

/** The listings of one page, one below the other, are one spec: each shows a part of it. */
function specOf({ chapter, text }: GuidePage): string {
  const whole: Keys = {};
  for (const body of fenced(text, 'yaml')) {
    for (const [key, value] of Object.entries(parse(body, { schema: 'failsafe' }) as Keys))
      whole[key] = Array.isArray(value) ? value : { ...(whole[key] as object), ...value };
  }
  const head = { board: `Guide, ${chapter}`, document: 'G', revision: 'A', issued: '2026-01-15', status: 'draft' };
  return stringify({ ...head, purpose: 'Examples of the guide', ...whole });
}

const withSpecs = guidePages.filter(({ text }) => fenced(text, 'yaml').length > 0);

test('the guide has chapters with specs and chapters with commands', () => {
  expect(withSpecs.map(({ chapter }) => chapter)).toEqual(['spec', 'tolerance', 'review']);
  expect(guidePages.filter(({ text }) => commandsIn(text).length > 0).length).toBeGreaterThanOrEqual(4);
  for (const { text, chapter } of guidePages)
    for (const language of languages(text)) expect(['yaml', 'sh', 'csv', 'mdx'], chapter).toContain(language);
});

test.each(withSpecs)('the listings of $chapter are a spec that builds and can be calculated', (page) => {
  const { board, problems } = readSpec(specOf(page), { file: page.chapter, board: 'guide', revision: 'a' }, handbook);
  expect(showProblems(problems)).toBe('');
  expect(undefinedResults(board!)).toEqual([]);
  const { results, checks } = find(board!, { seed: 1, trials: 200, digest: '', tool: 'test' });
  expect(Object.keys(results).length).toBeGreaterThan(0);
  for (const { verdict } of checks) expect(verdict).not.toBe('not assessed');
});

test('the bench results and the note of the review page are read for the board of that page', () => {
  const page = withSpecs.find(({ chapter }) => chapter === 'review')!;
  const { board } = readSpec(specOf(page), { file: page.chapter, board: 'guide', revision: 'a' }, handbook);
  const [csv, mdx] = [fenced(page.text, 'csv'), fenced(page.text, 'mdx')];
  expect([csv.length, mdx.length]).toEqual([1, 1]);
  const bench = readBench(csv[0]!, 'bench.csv', board!);
  expect(showProblems(bench.problems)).toBe('');
  const measured = find({ ...board!, bench: bench.readings }, { seed: 1, trials: 2000, digest: '', tool: 'test' });
  expect(measured.bench.map(({ verdict }) => verdict)).toEqual(['as predicted', 'as predicted']);
  const notes = readNotes(mdx[0]!, 'notes.mdx', board!);
  expect(showProblems(notes.problems)).toBe('');
  expect(notes.notes.map(({ kind }) => kind)).toEqual(['heading', 'paragraph', 'equation']);
});

describe('commands', () => {
  const scripts = Object.keys(
    (JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { scripts: object }).scripts,
  );
  const all = guidePages.flatMap(({ chapter, text }) => commandsIn(text).map((command) => ({ chapter, ...command })));
  let designs = '';
  beforeAll(async () => {
    designs = await mkdtemp(join(tmpdir(), 'copperplate-guide-'));
  });
  afterAll(() => rm(designs, { recursive: true, force: true }));

  test.each(all)('$chapter: npm run $script $words is a command with options that it knows', ({ script, words }) => {
    expect(scripts).toContain(script);
    if (script === 'new' || script === 'method') return;
    expect(readOptions(words).only.every((name) => /^[a-z0-9-]+(\/rev-[a-z])?$/.test(name))).toBe(true);
  });

  // In order, as a reader would type them, in a folder of their own; the packet and the live pages have tests of their own.
  test.each([
    ['first-board', 'new', 'check', 'method'],
    ['review', 'new', 'check'],
  ])(
    'of %s do what the text says',
    async (chapter, ...kinds) => {
      const folder = join(designs, chapter);
      const page = guidePages.find((one) => one.chapter === chapter)!;
      for (const { script, words } of commandsIn(page.text).filter(({ script }) => kinds.includes(script))) {
        const own = script === 'method' || words.includes('--list') ? words : [...words, '--designs', folder];
        const { status, out, err } = await runCommand(script, own);
        expect(err, `${script} ${words.join(' ')}`).toBe('');
        expect(status).toBe(0);
        expect(out.length).toBeGreaterThan(20);
      }
    },
    60_000,
  );
});

describe('the examples with pictures', () => {
  const texts = guideExamples();
  const boards = {
    divider: calculatedExample('divider', texts.divider),
    words: calculatedExample('words', texts.words),
    load: calculatedExample('load', texts.load),
  };
  const figures = new Map(guideFigures(boards).map((figure) => [figure.id, figure]));

  test('each stands on a page, and each page asks only for what there is', () => {
    const asked = guidePages.flatMap(({ text }) =>
      [...text.matchAll(/<GuideBlock names=\{\[([^\]]*)\]\}/g)].flatMap(([, names]) =>
        names!.split(',').map((name) => name.trim().replaceAll("'", '')),
      ),
    );
    expect(asked.sort()).toEqual([...Object.keys(texts), ...figures.keys()].sort());
  });

  test('the divider oversteps its limit in the worst case, and on few boards', () => {
    const [check] = boards.divider.findings.checks;
    expect(check!.verdict).toBe('fail');
    expect(check!.fail_fraction!.estimate).toBeLessThan(0.01);
    const { intervals } = figures.get('guide-spread')!.plot as Histogram;
    expect(intervals!.worst[1]).toBeCloseTo((42 * 12.12) / (12.12 + 148.5), 6);
    expect(intervals!.spread![2]).toBeLessThan(intervals!.worst[1]);
  });

  test('the word moves the spread and leaves the worst case alone', () => {
    const { results } = boards.words.findings;
    const [normal, triangular, uniform] = ['R_n', 'R_t', 'R_u'].map((symbol) => results[`parts.${symbol}`]!);
    expect(triangular!.worst).toMatchObject({ min: normal!.worst.min, max: normal!.worst.max });
    expect(uniform!.worst).toMatchObject({ min: normal!.worst.min, max: normal!.worst.max });
    expect(normal!.spread!.sd).toBeLessThan(triangular!.spread!.sd);
    expect(triangular!.spread!.sd).toBeLessThan(uniform!.spread!.sd);
  });

  test('the worst case of the load lies inside its range, and every box encloses the curve', () => {
    const { worst } = boards.load.findings.results['source.P']!;
    expect(worst.max).toBeCloseTo(500, 3);
    expect(worst.at_max['source.R_L']).toBeCloseTo(50, 1);
    expect(worst.proven).toBe(true);
    const plot = figures.get('guide-bounds')!.plot;
    if (plot.kind !== 'bounds') throw new Error('The picture of the bounds is another one.');
    const widest = (pieces: typeof plot.fine) => Math.max(...pieces.map(({ high }) => high));
    expect(widest(plot.fine)).toBeLessThan(widest(plot.coarse));
    for (const { from, to, low, high } of [...plot.coarse, ...plot.fine])
      for (const { y } of plot.line.filter(({ x }) => x >= from && x <= to)) {
        expect(y).toBeGreaterThanOrEqual(low);
        expect(y).toBeLessThanOrEqual(high);
      }
  });
});
