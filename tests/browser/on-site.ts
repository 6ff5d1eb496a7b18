import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';

/** The built site and the browser that looks at it; asked for only while a test runs. */
export interface OnSite {
  folder(): string;
  browser(): Browser;
}

export const addressOf = (site: OnSite, path: string): string => pathToFileURL(join(site.folder(), path)).href;

/** Every page of the site but the documents that are printed, by its path in the site's folder. */
export const screenPaths = (site: OnSite): string[] =>
  readdirSync(site.folder(), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.html') && !path.endsWith('packet.html'))
    .sort();

/** One page or more of every kind: the list, each chapter of a packet, a section of it, the guide, the handbook. */
export const kindPaths = (site: OnSite): string[] =>
  screenPaths(site).filter((path) =>
    /^index\.html$|^orchard-cart\/rev-b\/([a-z-]+|calculations\/stage)\.html$|^guide\/(index|spec|tolerance|worst-case)\.html$|^handbook\/(index|published|voltage-divider|ripple-sharing)\.html$/.test(
      path,
    ),
  );

/** A page of each make-up: what differs from it differs in words alone. */
export const fewPaths: readonly string[] = [
  'index.html',
  'orchard-cart/rev-b/index.html',
  'orchard-cart/rev-b/summary.html',
  'orchard-cart/rev-b/cautions.html',
  'orchard-cart/rev-b/calculations/stage.html',
  'orchard-cart/rev-b/tolerances.html',
  'orchard-cart/rev-b/parts.html',
  'guide/tolerance.html',
  'handbook/voltage-divider.html',
];

/** Opens pages one after the other in a context of its own. */
export async function onEach(
  site: OnSite,
  paths: readonly string[],
  options: BrowserContextOptions,
  look: (page: Page, path: string) => Promise<void>,
): Promise<void> {
  const context = await site.browser().newContext(options);
  try {
    const page = await context.newPage();
    for (const path of paths) {
      await page.goto(addressOf(site, path));
      await look(page, path);
    }
  } finally {
    await context.close();
  }
}
