import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Parser } from 'htmlparser2';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runScript } from '../commands/run-command.ts';
import { attack } from './fixture/hostile.ts';

let folder = '';
const sites: Record<'ordinary' | 'hostile', Map<string, string>> = { ordinary: new Map(), hostile: new Map() };

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'copperplate-site-'));
  await buildApart(join(folder, 'ordinary'));
  await buildApart(join(folder, 'hostile'), fileURLToPath(new URL('./fixture/hostile.ts', import.meta.url)));
  for (const name of ['ordinary', 'hostile'] as const) sites[name] = await filesOf(join(folder, name));
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** In a process of its own: the test runner's environment would make it a build for development. */
async function buildApart(out: string, ...packets: string[]): Promise<void> {
  const { status, err } = await runScript(fileURLToPath(new URL('./build-fixture.ts', import.meta.url)), [
    out,
    ...packets,
  ]);
  if (status !== 0) throw new Error(err);
}

async function filesOf(root: string): Promise<Map<string, string>> {
  const paths = (await readdir(root, { recursive: true })).filter((path) => /\.(html|css|json|csv)$/.test(path)).sort();
  return new Map(
    await Promise.all(paths.map(async (path) => [path, await readFile(join(root, path), 'utf8')] as const)),
  );
}

const pages = (site: 'ordinary' | 'hostile') => [...sites[site]].filter(([path]) => path.endsWith('.html'));

/** Names of elements and attributes in a page, and its text. */
function anatomy(html: string): { elements: Set<string>; attributes: Set<string>; text: string } {
  const [elements, attributes, text] = [new Set<string>(), new Set<string>(), [] as string[]];
  const parser = new Parser({
    onopentag(name, given) {
      elements.add(name);
      for (const key of Object.keys(given)) attributes.add(key);
    },
    ontext: (piece) => text.push(piece),
  });
  parser.end(html);
  return { elements, attributes, text: text.join('') };
}

describe('the built site', () => {
  test('has a page for each chapter, the print document, and the files beside them', () => {
    expect([...sites.ordinary.keys()].filter((path) => path.startsWith('orchard-cart/rev-b/'))).toEqual(
      expect.arrayContaining([
        'orchard-cart/rev-b/calculations/stage.html',
        'orchard-cart/rev-b/index.html',
        'orchard-cart/rev-b/margins.csv',
        'orchard-cart/rev-b/packet.html',
        'orchard-cart/rev-b/results.json',
      ]),
    );
    expect(sites.ordinary.get('orchard-cart/rev-b/margins.csv')).toBe('check,margin\n');
  });

  test('has no page for a board that failed, but says so in the list', () => {
    expect([...sites.ordinary.keys()].filter((path) => path.startsWith('hay-rake'))).toEqual([]);
    expect(sites.ordinary.get('index.html')).toContain('designs/hay-rake/rev-c/spec.yaml:31:14');
  });

  test('needs no script and forbids any', () => {
    for (const [path, html] of pages('ordinary')) {
      expect(anatomy(html).elements, path).not.toContain('script');
      expect(html, path).toContain(`<meta http-equiv="Content-Security-Policy" content="script-src 'none';`);
    }
  });

  test('has each anchor once', () => {
    for (const [path, html] of pages('ordinary')) {
      const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
      expect(ids.length, path).toBe(new Set(ids).size);
    }
  });

  test('leads nowhere but to its own files and to https', () => {
    for (const [path, html] of pages('ordinary')) expect(html, path).not.toMatch(/(?:href|src)="(?:\/|file:|http:)/);
  });

  test('stays inside the print document in print', () => {
    const html = sites.ordinary.get('orchard-cart/rev-b/packet.html')!;
    const links = [...html.matchAll(/<a [^>]*href="([^"]+)"/g)].map(([, address]) => address!);
    expect(links.length).toBeGreaterThan(50);
    expect(links.filter((address) => !/^(#|https:)/.test(address))).toEqual([]);
  });

  test('asks for the printed page of anchors that the print document has', () => {
    const print = sites.ordinary.get('orchard-cart/rev-b/packet.html')!;
    const wanted = pages('ordinary')
      .filter(([path]) => path.startsWith('orchard-cart/rev-b/'))
      .flatMap(([, html]) =>
        [...html.matchAll(/data-page-(?:of|range)="([^"]+)"/g)].flatMap(([, names]) => names!.split(' ')),
      );
    expect(wanted.length).toBeGreaterThan(50);
    for (const anchor of new Set(wanted)) expect(print).toContain(` id="${anchor}"`);
  });
});

describe('words in a packet', () => {
  test('cannot become markup, wherever they stand', () => {
    const clean = new Map(pages('ordinary'));
    for (const [path, html] of pages('hostile').filter(([path]) => path.startsWith('orchard-cart/'))) {
      const [spoiled, honest] = [anatomy(html), anatomy(clean.get(path)!)];
      expect(spoiled.text, path).toContain(attack);
      for (const name of spoiled.elements) expect(honest.elements, `${path}: <${name}>`).toContain(name);
      for (const name of spoiled.attributes) expect(honest.attributes, `${path}: ${name}=`).toContain(name);
    }
  });
});
