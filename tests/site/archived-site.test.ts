import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { archivedSite } from '../../src/site/archived-site.ts';
import { temporaryFolder } from '../archive/fixtures/temporary-folder.ts';

async function site(files: Readonly<Record<string, string>>): Promise<string> {
  const folder = await temporaryFolder();
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}

test('an archived site holds one revision and what it needs, and no link of it leads out', async () => {
  const folder = await site({
    'index.html': '<a href="x/rev-a/index.html">x</a><a href="x/rev-b/index.html">x</a>',
    'guide.html': '<link href="_astro/a.css"><a href="index.html">all</a><a href="methods/deep.html">m</a>',
    'methods/deep.html': '<p>deep',
    'handbook/divider.html': '<p>Used by another board',
    '_astro/a.css': '@font-face{src:url(face.woff2)}',
    '_astro/face.woff2': 'face',
    '_astro/other.css': '',
    'x/rev-a/index.html': '<p>earlier',
    'x/rev-a/packet.html': '<p>earlier',
    'x/rev-b/index.html':
      '<link href="../../_astro/a.css"><a href="../../index.html">all</a><a href="../../guide.html#range">g</a><a href="../rev-a/index.html#p">before</a><a href="../../handbook/divider.html#sizes">m</a><a href="https://example.org/">out</a><a href="#here">here</a>',
    'x/rev-b/packet.html': '<p>all',
    'x/rev-b/X-1-B.zip': 'earlier archive',
  });
  const files = await archivedSite(folder, 'x/rev-b', '<h1>front');
  expect([...files.keys()].sort()).toEqual([
    '_astro/a.css',
    '_astro/face.woff2',
    'guide.html',
    'index.html',
    'x/rev-b/index.html',
    'x/rev-b/packet.html',
  ]);
  expect(files.get('index.html')).toBe('<h1>front');
  expect(files.get('guide.html')).toBe(
    '<link href="_astro/a.css"><a href="index.html">all</a><a href="index.html">m</a>',
  );
  expect(files.get('x/rev-b/index.html')).toBe(
    '<link href="../../_astro/a.css"><a href="../../index.html">all</a><a href="../../guide.html#range">g</a><a href="../../index.html">before</a><a href="../../index.html">m</a><a href="https://example.org/">out</a><a href="#here">here</a>',
  );
});
