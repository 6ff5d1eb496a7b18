import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { pageLinks, styleAddresses } from '../../src/site/html-links.ts';
import { makeLinksRelative } from '../../src/site/relative-links.ts';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'copperplate-links-'));
});
afterEach(() => rm(folder, { recursive: true }));

async function site(files: Record<string, string>): Promise<void> {
  for (const [path, text] of Object.entries(files)) {
    await mkdir(dirname(join(folder, path)), { recursive: true });
    await writeFile(join(folder, path), text);
  }
}
const read = (path: string) => readFile(join(folder, path), 'utf8');
const none = () => false;

describe('links of a built site', () => {
  test('become relative paths of real files', async () => {
    await site({
      'index.html': '<a href="/cart/rev-b/">cart</a><a href="https://example.com/x">out</a>',
      'cart/rev-b/index.html':
        '<a href="/">all</a> <a href="/cart/rev-b/summary#worst">s</a> <a href="#here">h</a><p id="here">',
      'cart/rev-b/summary.html': '<link rel="stylesheet" href="/_astro/a.css"><p id="worst">',
      'cart/rev-b/calculations/stage.html':
        '<a href="/cart/rev-b/summary">s</a><img src="/pic.svg" srcset="/pic.svg 1x, /big.svg 2x">',
      '_astro/a.css': 'a{background:url("/pic.svg")}',
      'pic.svg': '',
      'big.svg': '',
    });
    await makeLinksRelative(folder, none);
    expect(await read('index.html')).toBe(
      '<a href="cart/rev-b/index.html">cart</a><a href="https://example.com/x">out</a>',
    );
    expect(await read('cart/rev-b/index.html')).toBe(
      '<a href="../../index.html">all</a> <a href="summary.html#worst">s</a> <a href="#here">h</a><p id="here">',
    );
    expect(await read('cart/rev-b/summary.html')).toContain('href="../../_astro/a.css"');
    expect(await read('cart/rev-b/calculations/stage.html')).toBe(
      '<a href="../summary.html">s</a><img src="../../../pic.svg" srcset="../../../pic.svg 1x, ../../../big.svg 2x">',
    );
    expect(await read('_astro/a.css')).toBe('a{background:url("../pic.svg")}');
  });

  test('that lead nowhere fail the build, all of them at once', async () => {
    await site({
      'index.html': '<a href="/gone">x</a><a href="page#no-such">y</a><a href="#nor-this">z</a>',
      'page.html': '<p id="there"></p><style>p{background:url(/none.png)}</style>',
    });
    await expect(makeLinksRelative(folder, none)).rejects.toThrow(
      [
        'Some links lead nowhere:',
        '  index.html: "/gone" leads to no file',
        '  index.html: "page#no-such" leads to an anchor that page.html does not have',
        '  index.html: "#nor-this" leads to an anchor that index.html does not have',
        '  page.html: "/none.png" leads to no file',
      ].join('\n'),
    );
  });

  test('may lead to files that are promised', async () => {
    await site({ 'cart/index.html': '<a href="/cart/packet.pdf">PDF</a>' });
    await makeLinksRelative(folder, (path) => path === 'cart/packet.pdf');
    expect(await read('cart/index.html')).toBe('<a href="packet.pdf">PDF</a>');
  });

  test('do not leave the folder', async () => {
    await site({ 'index.html': '<a href="/../../etc/passwd">x</a>' });
    await expect(makeLinksRelative(folder, none)).rejects.toThrow('leads to no file');
  });
});

describe('addresses in a page', () => {
  test('are found with their places, and ids beside them', () => {
    const html = '<a id="a" class=x href=/one>t</a><p style="background:url(/two.png)">not href="/three"</p>';
    const { addresses, ids } = pageLinks(html);
    expect(addresses.map(({ text }) => text)).toEqual(['/one', '/two.png']);
    for (const { from, to, text } of addresses) expect(html.slice(from, to)).toBe(text);
    expect([...ids]).toEqual(['a']);
  });

  test('in a style sheet are found with and without quotes', () => {
    expect(styleAddresses('a{b:url(x.woff2)}c{d:url( "y.woff2" )}').map(({ text }) => text)).toEqual([
      'x.woff2',
      'y.woff2',
    ]);
  });
});
