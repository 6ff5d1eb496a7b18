import { describe, expect, test } from 'vitest';
import { boardList, chosenBy } from '../../src/site/board-list.ts';
import { woff2Only } from '../../src/site/katex-fonts.ts';
import { concerns, stored } from '../../src/site/loader.ts';
import { cssString, letterRules, pageRules } from '../../src/site/page-rules.ts';
import { addressOf, plainText, printLinks, screenLinks, screenPages } from '../../src/site/screen-pages.ts';
import { orchardCart } from './fixture/packet.ts';

test('a board is chosen by its verdict and status; one that is not built counts among those that fail', () => {
  const { verdict, status } = orchardCart;
  expect(chosenBy({ packet: orchardCart })).toEqual({ 'data-verdict': verdict, 'data-status': status });
  expect(chosenBy({ failure: 'x' })).toEqual({ 'data-verdict': 'fail', 'data-status': undefined });
});

describe('screen pages', () => {
  const pages = screenPages(orchardCart);

  test('are the chapters, and the sections of chapters whose sections stand alone', () => {
    expect(pages.map(({ path }) => path)).toEqual([
      'index',
      'contents',
      'summary',
      'safety',
      'calculations',
      'calculations/stage',
      'calculations/bus_sense',
      'margins',
      'tolerances',
      'parts',
      'colophon',
    ]);
  });

  test('know the printed pages they stand on', () => {
    expect(pages.find(({ path }) => path === 'summary')).toMatchObject({
      from: 'chapter-summary',
      to: 'chapter-summary-end',
    });
    expect(pages.find(({ path }) => path === 'calculations/stage')).toMatchObject({ from: 'stage', to: 'stage-end' });
  });

  test('have addresses below their revision', () => {
    expect(addressOf(orchardCart, 'index')).toBe('/orchard-cart/rev-b/');
    expect(addressOf(orchardCart, 'calculations/stage')).toBe('/orchard-cart/rev-b/calculations/stage');
  });
});

describe('links to an anchor', () => {
  test('lead to the page on which it stands, on screen', () => {
    const { address, number } = screenLinks(orchardCart);
    expect(address('stage.T_j')).toBe('/orchard-cart/rev-b/calculations/stage#stage.T_j');
    expect(address('chapter-cover')).toBe('/orchard-cart/rev-b/#chapter-cover');
    expect(address('margins.boot')).toBe('/orchard-cart/rev-b/margins#margins.boot');
    expect(number('stage.T_j')).toBe('7.4');
    expect(number('margins.boot')).toBe('chapter 8');
  });

  test('stay inside the print document', () => {
    expect(printLinks(orchardCart).address('stage.T_j')).toBe('#stage.T_j');
  });

  test('are an error where nothing has it', () => {
    expect(() => printLinks(orchardCart).address('stage.T_x')).toThrow(
      'orchard-cart/rev-b refers to "stage.T_x", which stands nowhere in the packet.',
    );
  });

  test('are an error where two things have it', () => {
    const [cover, contents, summary, ...rest] = orchardCart.chapters;
    const twice = {
      ...summary!,
      sections: [...summary!.sections, { ...summary!.sections[0]!, id: 'stage', blocks: [] }],
    };
    expect(() => screenLinks({ ...orchardCart, chapters: [cover!, contents!, twice, ...rest] })).toThrow(
      'orchard-cart/rev-b: two things have the anchor "stage".',
    );
  });
});

test('text without marks', () => {
  expect(plainText(['at ', { kind: 'name', text: 'stage' }, ' ', { kind: 'math', tex: 'x' }])).toBe('at stage');
});

describe('rules for printed pages', () => {
  test('hold any title without letting it out of its string', () => {
    const hostile = '";}</style><script>alert(1)</script>\\';
    const css = pageRules({ ...orchardCart, title: hostile });
    expect(css).not.toContain('<');
    expect(css).not.toContain('script>');
    expect(cssString('a"\\b\n')).toBe('"a\\22 \\5c b\\a "');
  });

  test('name each chapter, and the sections that share pages, in the running head', () => {
    const css = pageRules(orchardCart);
    expect(css).toContain('@page c3{@top-right{content:"3 Summary"}}');
    expect(css).toContain('@page s7-4{@top-right{content:"7.4 to 7.8 Calculations"}}');
    expect(css).not.toContain('@page c7{');
    expect(css).toContain('@page c1{@top-left{content:none}}');
  });

  test('put sizes of named pages behind the size of all pages', () => {
    for (const css of [pageRules(orchardCart), letterRules(orchardCart)]) {
      expect(css.indexOf('@page{size:')).toBe(0);
      expect(css).toMatch(/@page c11\{size:(A4|letter) landscape/);
    }
  });
});

describe('the list of boards', () => {
  const revision = (board: string, name: string, issued: string, supersedes?: string) => ({
    board,
    revision: name,
    files: {},
    packet: { ...orchardCart, board, revision: name, issued, supersedes: supersedes ?? '' },
  });

  test('has superseded revisions apart, and boards in alphabetical order', () => {
    const list = boardList([
      revision('b', 'rev-a', '2025-01-01'),
      revision('b', 'rev-b', '2026-01-01', 'rev-a'),
      revision('a', 'rev-a', '2024-01-01'),
    ]);
    expect(list.current.map(({ board, revision: name }) => `${board}/${name}`)).toEqual(['a/rev-a', 'b/rev-b']);
    expect(list.earlier.map(({ board, revision: name }) => `${board}/${name}`)).toEqual(['b/rev-a']);
  });

  test('holds a revision that could not be built', () => {
    expect(boardList([{ board: 'x', revision: 'rev-a', files: {}, failure: 'line 3' }]).current).toHaveLength(1);
  });
});

describe('what is stored of a revision', () => {
  const failed = { board: 'orchard-cart', revision: 'rev-b', failure: 'spec.yaml:3:1 wrong' };

  test('a failure keeps the last good packet, until the spec is mended', () => {
    const good = {
      board: 'orchard-cart',
      revision: 'rev-b',
      packet: orchardCart,
      files: { 'a.csv': 'x' },
      watch: [],
      origin: { inputs: [] },
      release: '',
    };
    const first = stored(good);
    expect(first).toEqual({ board: 'orchard-cart', revision: 'rev-b', packet: orchardCart, files: { 'a.csv': 'x' } });
    const second = stored(failed, first);
    expect(second).toMatchObject({ packet: orchardCart, failure: 'spec.yaml:3:1 wrong' });
    expect(stored(failed, second).packet).toBe(orchardCart);
    expect(stored(good, second)).not.toHaveProperty('failure');
  });

  test('a spec that never was good has no packet', () => {
    expect(stored(failed)).not.toHaveProperty('packet');
  });

  test('files beside a watched one, and new specs, concern it', () => {
    const watched = new Set(['/d/cart/rev-b/spec.yaml', '/d/cart/rev-b/bench.csv']);
    expect(concerns('/d/cart/rev-b/bench.csv', watched)).toBe(true);
    expect(concerns('/d/cart/rev-b/notes.mdx', watched)).toBe(true);
    expect(concerns('/d/new/rev-a/spec.yaml', watched)).toBe(true);
    expect(concerns('/d/cart/rev-b/old/bench.csv', watched)).toBe(false);
    expect(concerns('/src/x.ts', watched)).toBe(false);
  });
});

test('only woff2 files of the formula faces are kept', () => {
  const face = 'src:url(f/a.woff2) format("woff2"),url(f/a.woff) format("woff"),url(f/a.ttf) format("truetype")';
  expect(woff2Only(face)).toBe('src:url(f/a.woff2) format("woff2")');
});
