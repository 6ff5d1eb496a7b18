import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { starterSpec } from '../../src/commands/starter-spec.ts';
import { calculate } from '../../src/site/calculate.ts';
import { readDesigns } from '../../src/site/designs.ts';
import { releaseListing, releaseRecord } from '../../src/site/frozen.ts';
import { loadHandbook } from '../../src/site/handbook-files.ts';
import { usualOptions } from '../../src/site/options.ts';
import { temporaryFolder } from '../archive/fixtures/temporary-folder.ts';

const book = loadHandbook();
const options = { ...usualOptions, trials: 200 };
const spec = starterSpec('dinghy', '2026-04-01').replace('status: draft', 'status: released');

/** A designs folder with one released revision and the record of its release. */
async function released(): Promise<{ folder: string; root: string; write(name: string, text: string): void }> {
  const root = await temporaryFolder();
  const folder = join(root, 'dinghy/rev-a');
  mkdirSync(folder, { recursive: true });
  const write = (name: string, text: string) => writeFileSync(join(folder, name), text);
  write('spec.yaml', spec);
  const found = calculate(readDesigns(root)[0]!, book, options);
  if ('failure' in found) throw new Error(found.failure);
  write(releaseRecord, releaseListing(found.inputs));
  return { folder, root, write };
}
const outcome = (root: string) => calculate(readDesigns(root)[0]!, book, options);
const failure = (root: string): string => {
  const found = outcome(root);
  return 'failure' in found ? found.failure : 'built';
};
const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');

describe('a released revision', () => {
  test('builds as long as nothing changes, and its record is what sha256sum reads', async () => {
    const { root, folder } = await released();
    const found = outcome(root);
    expect(found).toHaveProperty('findings');
    const said = execFileSync('sha256sum', ['--ignore-missing', '-c', releaseRecord], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect(said).toBe('spec.yaml: OK\n');
    const digest = 'findings' in found ? found.findings.inputs_sha256 : '';
    expect(sha256(readDesigns(root)[0]!.released!)).toBe(digest);
  });

  test('is refused when its spec changes, with both digests, the place, and the next step', async () => {
    const { root, write } = await released();
    const before = sha256(readDesigns(root)[0]!.released!);
    write('spec.yaml', spec.replace('18 kohm', '15 kohm'));
    const said = failure(root);
    expect(said).toMatch(/spec\.yaml:\d+:\d+ {2}changed-after-release/);
    expect(said).toMatch(/status: released/);
    expect(said).toContain(before);
    expect(said.match(/[0-9a-f]{64}/g)).toHaveLength(2);
    expect(said).toContain('changed: spec.yaml');
    expect(said).toContain('npm run new -- dinghy --from rev-a');
  });

  test('stays frozen when its status is taken back, or notes come', async () => {
    const { root, write } = await released();
    write('spec.yaml', spec.replace('status: released', 'status: draft'));
    expect(failure(root)).toContain('changed: spec.yaml');
    write('spec.yaml', spec);
    write('notes.mdx', 'Decided after all.\n');
    expect(failure(root)).toContain('changed: notes.mdx');
  });

  test('takes bench results, which can only come after it', async () => {
    const { root, write } = await released();
    write('bench.csv', 'result,measured,unit\nbus_sense.V_out,2.25,V\n');
    expect(failure(root)).not.toContain('changed-after-release');
  });

  test('is refused when a method of the tool changes, with other advice', async () => {
    const { root } = await released();
    const design = readDesigns(root)[0]!;
    const other = { ...book, files: new Map([...book.files, ['voltage-divider', '# changed\n']]) };
    const found = calculate(design, other, options);
    expect(found).toHaveProperty('failure');
    const said = 'failure' in found ? found.failure : '';
    expect(said).toContain('changed: methods/voltage-divider.yaml');
    expect(said).toContain('Build it with the version that released it');
  });
});
