import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { publishedMarkdown } from '../../src/packet/handbook/published-markdown.ts';
import { loadPublished } from '../../src/site/published-files.ts';
import { handbook } from '../handbook.ts';

// When this fails because a check was added or a figure moved: npx vitest run tests/published/markdown -u, and read the difference.
test('the table of published checks in docs/ is what the engine finds today', async () => {
  const published = loadPublished();
  const text = publishedMarkdown(published, { book: handbook, sets: published.sets });
  const rows = text.split('\n').filter((line) => /^\| (?!---|check )/.test(line));
  expect(rows.length).toBeGreaterThan(300);
  for (const row of rows) expect(row.split(/(?<!\\)\|/).length, row).toBe(11);
  expect(text).not.toMatch(/NaN|undefined|Infinity/);
  await expect(text).toMatchFileSnapshot(fileURLToPath(new URL('../../docs/published-checks.md', import.meta.url)));
});
