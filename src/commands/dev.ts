import { fileURLToPath } from 'node:url';
import { dev } from 'astro';
import { type Options, useOptions } from '../site/options.ts';
import { type ExitStatus, run } from './run.ts';

/** Live pages while a spec is edited; runs until it is stopped. */
async function serve(options: Options): Promise<ExitStatus> {
  useOptions(options);
  const server = await dev({ root: fileURLToPath(new URL('../../', import.meta.url)) });
  await new Promise<void>((stopped) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void server.stop().then(stopped));
  });
  return 0;
}

await run(serve);
