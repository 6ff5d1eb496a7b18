import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Where the tool keeps what it can make again: `.cache` in its own folder, or what COPPERPLATE_CACHE names. */
export const cacheFolder = (part: string): string =>
  join(process.env.COPPERPLATE_CACHE || fileURLToPath(new URL('../../.cache', import.meta.url)), part);
