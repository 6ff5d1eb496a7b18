import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from '../../src/archive/browser.ts';
import { findBrowser } from '../../src/archive/find-browser.ts';
import { runCommand } from '../commands/run-command.ts';
import { accessTests } from './access.ts';
import { buildSite } from './built-site.ts';
import { crawlTests } from './crawl.ts';
import { journeyTests } from './journey.ts';
import { policyTests } from './policy.ts';

const cache = fileURLToPath(new URL('../../.cache/browser', import.meta.url));

let site: Awaited<ReturnType<typeof buildSite>>;
let browser: Browser;

beforeAll(async () => {
  site = await buildSite();
  const found = await findBrowser({ platform: process.platform, arch: process.arch, env: process.env, cache });
  if ('missing' in found) throw new Error(found.missing);
  browser = (await openBrowser(found, cache)).browser;
}, 480_000);
afterAll(async () => {
  await browser?.close();
  await site?.remove();
});

const revision = (): string => join(site.folder, 'orchard-cart/rev-b');
const pages = (): string[] => [
  join(site.folder, 'index.html'),
  ...readdirSync(revision())
    .filter((name) => name.endsWith('.html') && name !== 'packet.html')
    .map((name) => join(revision(), name)),
];

test('the command ends with a table that says board, revision, verdict, yield and where the PDF lies', () => {
  expect(site.run).toMatchObject({ status: 0 });
  expect(site.run.out).toMatch(/board\s+revision\s+verdict\s+thinnest\s+yield\s+packet/);
  expect(site.run.out).toMatch(/orchard-cart\s+rev-a\s+FAIL\s.*OC-210-A\.pdf \(\d+ pages\)/);
  expect(site.run.out).toMatch(/orchard-cart\s+rev-b\s+marginal\s.*OC-210-B\.pdf \(\d+ pages\)/);
  expect(site.run.err).not.toMatch(/reaches \d+ px|WARN|ERROR/);
});

const onSite = { folder: () => site.folder, browser: () => browser };
accessTests(onSite);
journeyTests(onSite);
policyTests(onSite);
crawlTests(onSite);

describe('screen pages', () => {
  test('no page holds a script, and each forbids them', () => {
    for (const path of [...pages(), join(revision(), 'packet.html')]) {
      const html = readFileSync(path, 'utf8');
      expect(html, path).not.toMatch(/<script/i);
      expect(html, path).toMatch(/<meta http-equiv="Content-Security-Policy" content="script-src 'none'/);
    }
  });

  test('nothing reads NaN, undefined or null', () => {
    for (const path of pages())
      expect(readFileSync(path, 'utf8').replace(/<[^>]*>/g, ' '), path).not.toMatch(
        /\b(NaN|undefined|null|\[object)\b/,
      );
  });
});

describe('the PDF', () => {
  const read = async () => {
    const document = await getDocument({
      data: new Uint8Array(readFileSync(join(revision(), 'OC-210-B.pdf'))),
      useSystemFonts: false,
      verbosity: 0,
    }).promise;
    const texts: { text: string; width: number; height: number }[] = [];
    for (let n = 1; n <= document.numPages; n++) {
      const page = await document.getPage(n);
      const { items } = await page.getTextContent();
      const [, , width, height] = page.view as [number, number, number, number];
      texts.push({
        text: items
          .map((item) => ('str' in item ? item.str : ''))
          .join(' ')
          .replace(/\s+/g, ' '),
        width,
        height,
      });
    }
    return { document, texts };
  };
  test('is A4, and says on every page which document, revision, board and page of how many it is', async () => {
    const { texts } = await read();
    texts.forEach(({ text, width, height }, i) => {
      expect([Math.round(Math.min(width, height)), Math.round(Math.max(width, height))]).toEqual([595, 842]);
      expect(text).toContain(`Page ${i + 1} of ${texts.length}`);
      expect(text).toContain('OC-210');
      expect(text).toMatch(/revision B/);
      expect(text).toContain('Orchard cart hub drive');
      expect(text).toMatch(/inputs [0-9a-f]{4} ?[0-9a-f]{4} ?[0-9a-f]{4}/);
    });
  }, 60_000);
  test('its contents name true pages', async () => {
    const { texts } = await read();
    const margin = texts.findIndex(({ text }, i) => i > 2 && /8\s*Margin table/.test(text)) + 1;
    expect(margin).toBeGreaterThan(0);
    expect(texts[1]!.text).toMatch(new RegExp(`Margin table ${margin}\\b`));
  }, 60_000);
});

test('a run for one revision leaves the others as they are, and the list still leads to them', async () => {
  const before = readFileSync(join(site.folder, 'orchard-cart/rev-a/summary.html'));
  const run = await runCommand('packet', ['orchard-cart/rev-b', '--out', site.folder, '--trials', '1000']);
  expect(run.status).toBe(0);
  expect(run.out).not.toContain('rev-a');
  expect(readFileSync(join(site.folder, 'orchard-cart/rev-a/summary.html')).equals(before)).toBe(true);
  expect(readFileSync(join(site.folder, 'index.html'), 'utf8')).toContain('href="orchard-cart/rev-a/index.html"');
}, 480_000);
