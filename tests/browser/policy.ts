import { readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { addressOf, kindPaths, type OnSite } from './on-site.ts';

const types: Record<string, string> = { '.html': 'text/html', '.css': 'text/css', '.woff2': 'font/woff2' };

/** Every page forbids what it does not need, and needs nothing of what it forbids. */
export function policyTests(site: OnSite): void {
  const complaints = async (addresses: readonly string[]): Promise<string[]> => {
    const context = await site.browser().newContext();
    const page = await context.newPage();
    const found: string[] = [];
    page.on('console', (message) => found.push(`${page.url()} ${message.text()}`));
    page.on('requestfailed', (request) => found.push(`${page.url()} ${request.url()} ${request.failure()?.errorText}`));
    for (const address of addresses) {
      await page.goto(address);
      await page.evaluate(() => Promise.all([...document.fonts].map((font) => font.load())).catch(() => undefined));
    }
    await context.close();
    return found;
  };

  describe('the policy of each page', () => {
    test('lets everything through that a page from the folder asks for', async () => {
      expect(await complaints(kindPaths(site).map((path) => addressOf(site, path)))).toEqual([]);
    }, 60_000);

    test('lets everything through that a page from a server asks for', async () => {
      const server = createServer(({ url = '/' }, answer) => {
        const path = new URL(url, 'http://localhost').pathname;
        answer.setHeader('content-type', types[extname(path)] ?? 'application/octet-stream');
        try {
          answer.end(readFileSync(join(site.folder(), decodeURIComponent(path))));
        } catch {
          answer.writeHead(404).end();
        }
      });
      await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
      const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
      const paths = ['index.html', 'handbook/voltage-divider.html', 'orchard-cart/rev-b/summary.html'];
      // Browsers ask a server, and no folder, for a favicon that nobody named.
      const found = (await complaints(paths.map((path) => `${origin}/${path}`))).filter(
        (line) => !/favicon|404/.test(line),
      );
      await new Promise((closed) => server.close(closed));
      expect(found).toEqual([]);
    }, 60_000);

    test('stops a script, a handler, a frame and a stranger picture that got into a page', async () => {
      const attack =
        '<script>document.title = "ran"</script><img src="data:," onerror="document.title = \'ran\'"><img src="https://example.org/x.png"><iframe src="data:text/html,x"></iframe></body>';
      const path = join(site.folder(), 'attacked.html');
      const html = readFileSync(join(site.folder(), 'guide/index.html'), 'utf8').replaceAll('="../', '="');
      writeFileSync(path, html.replace('</body>', attack));
      const context = await site.browser().newContext();
      const page = await context.newPage();
      const refused: string[] = [];
      page.on('console', (message) => refused.push(message.text()));
      await page.goto(addressOf(site, 'attacked.html'));
      expect(await page.title()).toMatch(/^The guide/);
      for (const directive of ['script-src', 'img-src', 'default-src']) expect(refused.join('\n')).toContain(directive);
      await context.close();
    }, 60_000);
  });
}
