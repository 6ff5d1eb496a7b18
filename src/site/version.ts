import { readFileSync } from 'node:fs';

/** Version of this tool, as its package file states it. */
export const version: string = (
  JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string }
).version;
