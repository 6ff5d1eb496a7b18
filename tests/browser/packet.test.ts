import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from '../../src/archive/browser.ts';
import { findBrowser } from '../../src/archive/find-browser.ts';
import { runCommand } from '../commands/run-command.ts';
import { buildSite } from './built-site.ts';

const cache = fileURLToPath(new URL('../../.cache/browser', import.meta.url));
const axe = readFileSync(fileURLToPath(import.meta.resolve('axe-core/axe.min.js')), 'utf8');

let site: Awaited<ReturnType<typeof buildSite>>;
let browser: Browser;

beforeAll(async () => {
  site = await buildSite();
  const found = await findBrowser({ platform: process.platform, arch: process.arch, env: process.env, cache });
  if ('missing' in found) throw new Error(found.missing);
  browser = (await openBrowser(found, cache)).browser;
}, 240_000);
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

describe('screen pages, opened from the folder with scripts off', () => {
  test.each([1280, 390, 320])(
    'no page scrolls sideways at %d px, and none has an empty picture',
    async (width) => {
      const context = await browser.newContext({ javaScriptEnabled: false, viewport: { width, height: 900 } });
      const page = await context.newPage();
      const wide: string[] = [];
      for (const path of pages()) {
        await page.goto(pathToFileURL(path).href);
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        if (over > 0) wide.push(`${path} by ${over} px`);
      }
      expect(wide).toEqual([]);
      await context.close();
    },
    120_000,
  );

  test.each(['light', 'dark'] as const)(
    'axe finds no fault, %s',
    async (colorScheme) => {
      // axe itself is a script, so the policy that forbids scripts is lifted for its run.
      const context = await browser.newContext({
        bypassCSP: true,
        colorScheme,
        viewport: { width: 1280, height: 900 },
      });
      const page = await context.newPage();
      const faults: string[] = [];
      for (const path of pages()) {
        await page.goto(pathToFileURL(path).href);
        await page.evaluate(axe);
        const found = await page.evaluate(async () => {
          const { violations } = await (
            globalThis as unknown as {
              axe: { run(): Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }> };
            }
          ).axe.run();
          return violations.map(
            ({ id, nodes }) =>
              `${id}: ${nodes
                .slice(0, 3)
                .map(({ target }) => target.join(' '))
                .join(' | ')}`,
          );
        });
        faults.push(...found.map((fault) => `${path.slice(site.folder.length)} ${fault}`));
      }
      expect(faults).toEqual([]);
      await context.close();
    },
    240_000,
  );

  test('from the list of boards to an equation and its source by clicking', async () => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(pathToFileURL(join(site.folder, 'index.html')).href);
    await page.click('a[href*="orchard-cart/rev-b"]');
    await page.click('nav a[href*="summary"], a[href*="summary"]');
    expect(await page.textContent('h1')).toContain('Summary');
    await page.click('table a[href*="#"]');
    expect(decodeURIComponent(new URL(page.url()).hash)).not.toBe('');
    expect(await page.locator(':target').count()).toBe(1);
    await context.close();
  });

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
}, 240_000);
