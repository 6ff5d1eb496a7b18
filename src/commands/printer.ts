import { mkdir, stat } from 'node:fs/promises';
import { BrowserError, type OpenBrowser, openBrowser } from '../archive/browser.ts';
import { type FoundBrowser, findBrowser, siteStays } from '../archive/find-browser.ts';
import { cacheFolder } from '../site/cache-folder.ts';

/** The browser that prints, found at once and started when something has to be printed. */
export interface Printer {
  /** Changes whenever another browser would print. */
  readonly identity: string;
  /** Starts it, or says why it cannot be had. */
  open(): Promise<OpenBrowser | { readonly missing: string }>;
  close(): Promise<void>;
}

export async function findPrinter(): Promise<Printer> {
  const cache = cacheFolder('browser');
  const found = await mkdir(cache, { recursive: true }).then(
    () => findBrowser({ platform: process.platform, arch: process.arch, env: process.env, cache }),
    (error: NodeJS.ErrnoException) => ({
      missing: `The printing browser has to be unpacked once, and ${cache} cannot be made (${error.code}). Name a folder that can be written in COPPERPLATE_CACHE. ${siteStays}`,
    }),
  );
  if ('missing' in found) return { identity: 'none', open: async () => found, close: async () => {} };
  let opened: Promise<OpenBrowser | { missing: string }> | undefined;
  return {
    identity: await identityOf(found),
    open: () => {
      opened ??= openBrowser(found, cache).catch((error: unknown) => {
        if (!(error instanceof BrowserError)) throw error;
        return { missing: error.message };
      });
      return opened;
    },
    close: async () => {
      const running = await opened?.catch(() => undefined);
      if (running && 'browser' in running) await running.browser.close();
    },
  };
}

/** The lock file pins the shipped one; an installed one is updated behind our back. */
async function identityOf({ from, program }: FoundBrowser): Promise<string> {
  if (from === 'shipped') return from;
  const { size, mtimeMs } = await stat(program);
  return `${program} ${size} ${mtimeMs}`;
}
