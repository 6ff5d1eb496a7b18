import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { sbomOf } from '../../../src/archive/bag/sbom.ts';

interface Sbom {
  readonly serialNumber: string;
  readonly components: readonly { readonly 'bom-ref': string; readonly hashes: unknown; readonly scope: string }[];
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn: readonly string[] }[];
}
const lock = readFileSync(new URL('../../../package-lock.json', import.meta.url), 'utf8');
const read = (text: string) => JSON.parse(sbomOf(text)) as Sbom;

test('the bill of materials of this tool refers to nothing that is not in it, and leaves out what is for development', () => {
  const { components, dependencies, serialNumber } = read(lock);
  const refs = components.map((component) => component['bom-ref']);
  expect(new Set(refs).size).toBe(refs.length);
  expect(refs).toEqual(expect.arrayContaining([expect.stringMatching(/^pkg:npm\/%40fontsource\/stix-two-text@\d/)]));
  expect(refs.join()).not.toMatch(/vitest|biome/);
  const known = new Set(refs);
  expect(dependencies.flatMap(({ dependsOn }) => dependsOn).filter((ref) => !known.has(ref))).toEqual([]);
  expect(dependencies[0]!.dependsOn).toEqual(expect.arrayContaining([expect.stringMatching(/^pkg:npm\/astro@/)]));
  expect(serialNumber).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});

test('a package finds its own copy of another first, then that of the packages around it', () => {
  const integrity = `sha512-${Buffer.alloc(64, 1).toString('base64')}`;
  const { components, dependencies } = read(
    JSON.stringify({
      packages: {
        '': { name: 'tool', version: '1.0.0', dependencies: { a: '1', c: '1' } },
        'node_modules/a': { version: '1.0.0', integrity, dependencies: { b: '1', c: '1' } },
        'node_modules/a/node_modules/b': { version: '2.0.0', dependencies: { c: '1' } },
        'node_modules/b': { version: '1.0.0', dev: true },
        'node_modules/c': { version: '1.0.0', optional: true, license: 'MIT' },
      },
    }),
  );
  expect(components.map((component) => component['bom-ref'])).toEqual([
    'pkg:npm/a@1.0.0',
    'pkg:npm/b@2.0.0',
    'pkg:npm/c@1.0.0',
  ]);
  expect(components[0]!.hashes).toEqual([{ alg: 'SHA-512', content: '01'.repeat(64) }]);
  expect(components[2]!.scope).toBe('optional');
  expect(Object.fromEntries(dependencies.map(({ ref, dependsOn }) => [ref, dependsOn]))).toEqual({
    'pkg:npm/tool@1.0.0': ['pkg:npm/a@1.0.0', 'pkg:npm/c@1.0.0'],
    'pkg:npm/a@1.0.0': ['pkg:npm/b@2.0.0', 'pkg:npm/c@1.0.0'],
    'pkg:npm/b@2.0.0': ['pkg:npm/c@1.0.0'],
    'pkg:npm/c@1.0.0': [],
  });
});
