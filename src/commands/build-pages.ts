import { channel } from 'node:diagnostics_channel';
import { fileURLToPath } from 'node:url';
import { outputError } from '../archive/output-error.ts';
import { type HandedOver, handOver } from '../site/hand-over.ts';
import { type Options, useOptions } from '../site/options.ts';
import { pageChannel } from '../site/page-channel.ts';
import { screenPages } from '../site/screen-pages.ts';
import { nameOf } from './finished.ts';
import type { Progress } from './progress.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * Builds the pages of some revisions, and the list of all, into `folder`, which is emptied first.
 * @param caches  folder for what the build notes meanwhile; two builds at once must not share one
 */
export async function buildPages(
  folder: string,
  caches: string,
  what: HandedOver,
  options: Options,
  progress: Progress,
): Promise<void> {
  handOver(what);
  useOptions(options);
  const pages = what.built.reduce((sum, { packet }) => sum + (packet ? screenPages(packet).length + 1 : 0), 0);
  const names = new Set(what.built.map(nameOf));
  let done = 0;
  const tell = (path: unknown): void => {
    const name = String(path).split('/').slice(1, 3).join('/');
    if (names.has(name) && done < pages) progress.stage('building page', ++done, pages, name);
  };
  // Set before Astro is loaded: a shell that is set up for something else must not change what is built.
  process.env.NODE_ENV = 'production';
  progress.stage('building pages');
  const rendered = channel(pageChannel);
  rendered.subscribe(tell);
  try {
    const { build } = await import('astro');
    await build({ root, outDir: folder, cacheDir: caches, logLevel: 'error' });
  } catch (error) {
    throw outputError(error, 'Building the site', `${options.out} is as it was.`);
  } finally {
    rendered.unsubscribe(tell);
  }
}
