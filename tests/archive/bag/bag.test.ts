import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { bagOf, text } from '../../../src/archive/bag/bag.ts';
import { bagProblems } from '../../../src/archive/bag/bag-problems.ts';
import { differences } from '../../../src/archive/bag/differences.ts';
import { temporaryFolder } from '../fixtures/temporary-folder.ts';

const bag = () =>
  new Map(
    bagOf(
      [text('site/index.html', '<p>packet'), text('inputs/spec.yaml', 'board: x\n')],
      [text('README.txt', 'Read me.\n')],
      [['Bagging-Date', '2026-03-18']],
    ).map(({ name, bytes }) => [name, bytes] as const),
  );
const changed = (change: (files: Map<string, Uint8Array>) => void) => {
  const files = bag();
  change(files);
  return bagProblems(files);
};

test('a bag is whole by its own account and by that of coreutils', async () => {
  expect(bagProblems(bag())).toEqual([]);
  const folder = await temporaryFolder();
  for (const [name, bytes] of bag()) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), bytes);
  }
  for (const bits of ['256', '512']) {
    for (const kind of ['manifest', 'tagmanifest']) {
      const said = execFileSync(`sha${bits}sum`, ['--strict', '-c', `${kind}-sha${bits}.txt`], {
        cwd: folder,
        encoding: 'utf8',
      });
      expect(said.match(/: OK$/gm)).toHaveLength(kind === 'manifest' ? 2 : 5);
    }
  }
});

test('bag-info counts octets and files of the payload', () => {
  expect(Buffer.from(bag().get('bag-info.txt')!).toString()).toBe('Bagging-Date: 2026-03-18\nPayload-Oxum: 18.2\n');
});

describe('each fault is named', () => {
  test('a changed byte', () => {
    expect(changed((files) => files.set('data/inputs/spec.yaml', Buffer.from('board: y\n')))).toEqual([
      'data/inputs/spec.yaml was changed (manifest-sha256.txt, manifest-sha512.txt).',
    ]);
  });
  test('a missing file', () => {
    expect(changed((files) => files.delete('data/site/index.html'))).toEqual([
      'data/site/index.html is missing (manifest-sha256.txt, manifest-sha512.txt).',
      'bag-info.txt says Payload-Oxum 18.2, the payload has 9.1 (octets.files).',
    ]);
  });
  test('an extra file, in the payload or beside it', () => {
    expect(changed((files) => files.set('data/more.txt', Buffer.from(''))).join()).toMatch(/^data\/more\.txt is extra/);
    expect(changed((files) => files.set('more.txt', Buffer.from(''))).join()).toMatch(/^more\.txt is extra/);
  });
  test('a changed README, which no payload manifest lists', () => {
    expect(changed((files) => files.set('README.txt', Buffer.from('Trust me.\n')))).toEqual([
      'README.txt was changed (tagmanifest-sha256.txt, tagmanifest-sha512.txt).',
    ]);
  });
  test('a file changed together with one of its two manifests', () => {
    const problems = changed((files) => {
      const other = bagOf([text('site/index.html', '<p>packet'), text('inputs/spec.yaml', 'board: z\n')], [], []);
      for (const name of ['data/inputs/spec.yaml', 'manifest-sha256.txt'])
        files.set(name, other.find((file) => file.name === name)!.bytes);
    });
    expect(problems.join('\n')).toMatch(/data\/inputs\/spec\.yaml was changed \(manifest-sha512\.txt\)/);
    expect(problems.join('\n')).toMatch(
      /manifest-sha256\.txt was changed \(tagmanifest-sha256\.txt, tagmanifest-sha512\.txt\)/,
    );
  });
  test('a manifest that is missing, broken, or leads out of the payload', () => {
    expect(changed((files) => files.delete('manifest-sha512.txt')).join('\n')).toMatch(
      /^manifest-sha512\.txt is missing\./,
    );
    const broken = (line: string) =>
      changed((files) =>
        files.set('manifest-sha256.txt', Buffer.concat([files.get('manifest-sha256.txt')!, Buffer.from(line)])),
      );
    expect(broken('no digest\n')).toContain(
      'manifest-sha256.txt, line 3, is not a digest, two spaces and a file name.',
    );
    expect(broken(`${'0'.repeat(64)}  ../spec.yaml\n`).join()).toMatch(/line 3/);
  });
  test('a folder that is no bag', () => {
    expect(bagProblems(new Map([['index.html', Buffer.from('')]]))).toEqual([expect.stringMatching(/^bagit\.txt/)]);
  });
});

test('a name that sha256sum would write otherwise cannot go in', () => {
  expect(() => bagOf([text('a\nb', '')], [], [])).toThrow(RangeError);
  expect(() => bagOf([text('50%', '')], [], [])).toThrow(RangeError);
});

test('differences name the payload first, then the rest, then the zip itself', () => {
  const other = bag();
  expect(differences(bag(), other)).toEqual(['Every file is the same; the zip around them is packed otherwise.']);
  other.set('README.txt', Buffer.from('Read it.\n'));
  expect(differences(bag(), other)).toEqual(['README.txt differs from byte 6 on (9 bytes, now 9).']);
  other.set('data/inputs/spec.yaml', Buffer.from('board: x\n# and\n'));
  other.delete('data/site/index.html');
  expect(differences(bag(), other)).toEqual([
    'data/inputs/spec.yaml differs from byte 10 on (9 bytes, now 15).',
    'data/site/index.html did not come about again.',
  ]);
});
