import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'astro';

const root = fileURLToPath(new URL('../..', import.meta.url));
const fixture = fileURLToPath(new URL('./fixture/packet.ts', import.meta.url));

/** Builds the site into `out` with the packets of `tests/site/fixture` in place of calculated ones. */
export async function buildFixture(out: string, packets = fixture): Promise<void> {
  await build({
    root,
    outDir: pathToFileURL(`${out}/`).href,
    cacheDir: pathToFileURL(`${out}.cache/`).href,
    logLevel: 'error',
    vite: {
      plugins: [
        {
          name: 'fixture-packets',
          enforce: 'pre',
          resolveId: (id: string) => (id.endsWith('site/calculate.ts') ? packets : undefined),
        },
      ],
    },
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildFixture(process.argv[2] ?? '/tmp/fixture-site');
