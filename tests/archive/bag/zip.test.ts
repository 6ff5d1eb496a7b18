import { execFileSync } from 'node:child_process';
import { type Zippable, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { packZip, unpackZip, ZipError } from '../../../src/archive/bag/zip.ts';

const file = (name: string, content = name) => ({ name, bytes: Buffer.from(content) });

describe('packing', () => {
  const files = [file('b/two.txt'), file('a.txt', 'alpha '.repeat(1000)), file('b/é.pdf')];

  test('gives back what went in, whatever the order, in the same bytes', () => {
    const zip = packZip(files, '2026-03-18');
    expect(Buffer.compare(packZip(files.toReversed(), '2026-03-18'), zip)).toBe(0);
    const back = unpackZip(zip);
    expect([...back.keys()]).toEqual(['a.txt', 'b/two.txt', 'b/é.pdf']);
    for (const { name, bytes } of files) expect(Buffer.from(back.get(name)!)).toEqual(bytes);
    expect(zip.length).toBeLessThan(600);
  });

  // In Beirut and Havana a day of spring begins at one o'clock: there is no midnight to write.
  test.each(['UTC', 'Pacific/Kiritimati', 'America/Havana', 'Asia/Beirut'])('the same bytes in %s', (TZ) => {
    const script = `import { packZip } from './src/archive/bag/zip.ts';
      for (const day of ['2026-03-08', '2026-03-29', '2026-11-01'])
        console.log(Buffer.from(packZip([{ name: 'a', bytes: Buffer.from('a') }], day)).toString('hex'));`;
    const [march, , november] = execFileSync(process.execPath, ['--input-type=module', '-e', script], {
      env: { ...process.env, TZ, LANG: 'tr_TR.UTF-8' },
      encoding: 'utf8',
    }).split('\n');
    expect(march).toBe(Buffer.from(packZip([file('a')], '2026-03-08')).toString('hex'));
    expect(november).toBe(Buffer.from(packZip([file('a')], '2026-11-01')).toString('hex'));
    // MS-DOS date and time of the local header: 2026-03-08, 12:00.
    expect(Buffer.from(march!, 'hex').readUInt32LE(10)).toBe((46 << 25) | (3 << 21) | (8 << 16) | (12 << 11));
  });
});

describe('unpacking refuses', () => {
  const zipOf = (names: readonly string[]) =>
    zipSync(Object.fromEntries(names.map((name) => [name, Buffer.from('x')])) as Zippable);

  test.each([
    '../up.txt',
    'a/../../up.txt',
    '/etc/passwd',
    'C:/windows',
    'a\\..\\b',
    'a/./b',
    'a\u0000b',
    '__proto__/x',
  ])('the name %j', (name) => {
    expect(() => unpackZip(zipOf(['a/fine.txt', name]))).toThrow(ZipError);
    expect(() => unpackZip(zipOf(['a/fine.txt', name]))).toThrow('nothing was unpacked');
  });

  test('a name that stands twice', () => {
    const zip = Buffer.from(zipOf(['a/one.txt', 'a/two.txt']));
    const twice = Buffer.from(zip.toString('latin1').replaceAll('a/two.txt', 'a/one.txt'), 'latin1');
    expect(() => unpackZip(twice)).toThrow('stands in it twice');
  });

  test('what is no zip, or cut short', () => {
    expect(() => unpackZip(Buffer.from('%PDF-1.4'))).toThrow('not a whole zip file');
    const zip = packZip([file('a.txt', 'alpha')], '2026-03-18');
    expect(() => unpackZip(zip.subarray(0, -30))).toThrow('not a whole zip file');
  });

  test('a file that says it unpacks to gigabytes', () => {
    const zip = Buffer.from(zipOf(['bomb']));
    const directory = zip.indexOf('PK\u0001\u0002');
    zip.writeUInt32LE(0x7fffffff, directory + 24);
    expect(() => unpackZip(zip)).toThrow('more than a gigabyte');
  });
});
