import { describe, expect, test } from 'vitest';
import { digestListing, inputsDigest, sha256 } from '../../src/archive/digest.ts';

const files = [
  { name: 'spec.yaml', bytes: 'board: x\n' },
  { name: 'methods/divider.yaml', bytes: 'Ω\n' },
  { name: 'bench.csv', bytes: new Uint8Array() },
];

describe('the digest of the inputs', () => {
  test('is what coreutils make of the same files', () => {
    // find . -type f -printf '%P\n' | LC_ALL=C sort | xargs -d '\n' sha256sum | sha256sum
    expect(inputsDigest(files)).toBe('dbcb08f9cc3d24b6c89fb00f7dc40d9b41f6ceff34a8e88a190daa0bc78b17af');
  });
  test('does not depend on the order of the files', () => {
    expect(inputsDigest(files.toReversed())).toBe(inputsDigest(files));
  });
  test('sees a changed octet, a changed name, and a file more', () => {
    const others = [
      [...files.slice(1), { name: 'spec.yaml', bytes: 'board: y\n' }],
      [...files.slice(1), { name: 'Spec.yaml', bytes: 'board: x\n' }],
      [...files, { name: 'notes.mdx', bytes: '' }],
    ];
    expect(new Set([files, ...others].map(inputsDigest)).size).toBe(4);
  });
  test('sorts by octets, capitals and underscores where ASCII has them', () => {
    const names = ['b', 'a_b', 'a.b', 'B', 'ä', 'a/b'].map((name) => ({ name, bytes: '' }));
    expect([...digestListing(names).matchAll(/ {2}(.*)\n/g)].map(([, name]) => name)).toEqual([
      'B',
      'a.b',
      'a/b',
      'a_b',
      'b',
      'ä',
    ]);
  });
  test.each([['a\nb'], ['a\\b']])('refuses the name %j, which sha256sum would write otherwise', (name) => {
    expect(() => inputsDigest([{ name, bytes: '' }])).toThrow(`The file name ${JSON.stringify(name)} cannot stand`);
  });
  test('refuses a name that stands twice', () => {
    expect(() => inputsDigest([files[0]!, files[0]!])).toThrow('The file spec.yaml stands twice among the inputs.');
  });
});

test('SHA-256 of "abc" is that of FIPS 180-2, appendix B.1', () => {
  expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});
