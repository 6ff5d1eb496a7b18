import { fileURLToPath } from 'node:url';
import { build } from 'astro';

const root = fileURLToPath(new URL('../..', import.meta.url));
const fixture = fileURLToPath(new URL('./fixture/packet.ts', import.meta.url));

/** Builds the site into `out` with the packets of `tests/site/fixture` in place of calculated ones. */
export async function buildFixture(out: string, packets = fixture): Promise<void> {
  await build({
    root,
    outDir: out,
    cacheDir: `${out}.cache`,
    logLevel: 'error',
    vite: {
      plugins: [
        {
          name: 'fixture-packets',
          enforce: 'pre',
          resolveId: (id: string) => (id.endsWith('site/packets.ts') ? packets : undefined),
        },
      ],
    },
  });
}

const [, script, out, packets] = process.argv;
if (out !== undefined && script === fileURLToPath(import.meta.url)) await buildFixture(out, packets);
