import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { keepEarlier, keepFolders } from '../archive/keep-earlier.ts';
import { currentOptions } from './options.ts';

/** What the pages of every packet share. */
const shared = ['_astro', 'fonts'];

/**
 * Brings the packets that this run does not build over from the earlier output, before links are looked at, so that the list
 * of boards leads to them too.
 */
export function keepPackets(): AstroIntegration {
  return {
    name: 'copperplate-keep-packets',
    hooks: {
      'astro:build:done': async ({ dir }) => {
        const { out, kept } = currentOptions();
        if (kept.length) await keepEarlier(out, fileURLToPath(dir), keepFolders([...kept, ...shared]));
      },
    },
  };
}
