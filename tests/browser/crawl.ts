import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join, posix } from 'node:path';
import { HtmlValidate } from 'html-validate';
import { Parser } from 'htmlparser2';
import { describe, expect, test } from 'vitest';
import { kindPaths, type OnSite } from './on-site.ts';

interface Crawled {
  readonly links: string[];
  readonly ids: Set<string>;
}

function crawled(html: string): Crawled {
  const [links, ids] = [[] as string[], new Set<string>()];
  const parser = new Parser({
    onopentag(name, { href, src, id }) {
      if (id !== undefined) ids.add(id);
      const address = name === 'a' || name === 'link' ? href : src;
      if (address !== undefined) links.push(address);
    },
  });
  parser.end(html);
  return { links, ids };
}

/** The whole built site, every file of it, looked through by its links. */
export function crawlTests(site: OnSite): void {
  describe('the whole site', () => {
    test('has no link and no fragment that leads nowhere, and no page to which nothing leads', () => {
      rmSync(join(site.folder(), 'attacked.html'), { force: true });
      const files = new Set(readdirSync(site.folder(), { recursive: true, encoding: 'utf8' }));
      const pages = new Map(
        [...files]
          .filter((path) => path.endsWith('.html'))
          .map((path) => [path, crawled(readFileSync(join(site.folder(), path), 'utf8'))]),
      );
      const dead: string[] = [];
      const reached = new Set(['index.html']);
      for (const [path, { links }] of pages)
        for (const link of new Set(links)) {
          if (/^(https:|data:)/.test(link)) continue;
          const [file = '', fragment = ''] = link.split('#');
          const target = file === '' ? path : posix.join(posix.dirname(path), decodeURIComponent(file));
          if (!path.endsWith('packet.html') && target !== path) reached.add(target);
          const known = files.has(target) && (!fragment || pages.get(target)?.ids.has(decodeURIComponent(fragment)));
          if (!known) dead.push(`${path} -> ${link}`);
        }
      expect(dead).toEqual([]);
      expect([...pages.keys()].filter((path) => !reached.has(path) && !path.endsWith('packet.html'))).toEqual([]);
      expect(pages.size).toBeGreaterThan(120);
    }, 60_000);

    test('is valid HTML, on every kind of page', async () => {
      const validator = new HtmlValidate({
        root: true,
        extends: ['html-validate:recommended'],
        rules: {
          // Formulas carry their measures in style attributes, and a title names page, document and board.
          'no-inline-style': 'off',
          'long-title': 'off',
          // An anchor is the id of what stands there: `pack.V_bat`.
          'valid-id': ['error', { relaxed: true }],
          // Tables become blocks on narrow screens, where browsers forget what they were unless it is said again.
          'no-redundant-role': 'off',
        },
      });
      const faults: string[] = [];
      for (const path of kindPaths(site)) {
        const { results } = await validator.validateString(readFileSync(join(site.folder(), path), 'utf8'), path);
        for (const { messages } of results)
          faults.push(...messages.map(({ ruleId, message, selector }) => `${path} ${ruleId}: ${message} ${selector}`));
      }
      expect(faults).toEqual([]);
    }, 120_000);
  });
}
