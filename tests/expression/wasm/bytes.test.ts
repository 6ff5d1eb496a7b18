import { expect, test } from 'vitest';
import { Bytes } from '../../../src/expression/wasm/bytes.ts';

// Examples of the DWARF Debugging Information Format, version 5, tables 7.7 and 7.8 (from memory), and the ends.
test.each([
  [2, [2]],
  [127, [0x7f]],
  [128, [0x80, 0x01]],
  [129, [0x81, 0x01]],
  [12857, [0xb9, 0x64]],
  [4294967295, [0xff, 0xff, 0xff, 0xff, 0x0f]],
])('%d without sign', (value, bytes) => {
  expect([...new Bytes().unsigned(value).written]).toEqual(bytes);
});

test.each([
  [2, [0x02]],
  [-2, [0x7e]],
  [127, [0xff, 0x00]],
  [-127, [0x81, 0x7f]],
  [128, [0x80, 0x01]],
  [-128, [0x80, 0x7f]],
  [-129, [0xff, 0x7e]],
  [2147483647, [0xff, 0xff, 0xff, 0xff, 0x07]],
  [-2147483648, [0x80, 0x80, 0x80, 0x80, 0x78]],
])('%d with sign', (value, bytes) => {
  expect([...new Bytes().signed(value).written]).toEqual(bytes);
});

test('grows as far as it must', () => {
  const bytes = new Bytes();
  for (let i = 0; i < 10_000; i++) bytes.byte(i & 0xff);
  bytes.append(new Uint8Array(100_000).fill(7)).double(1).text('µ');
  expect(bytes.length).toBe(10_000 + 100_000 + 8 + 3);
  expect([...bytes.written.subarray(-11)]).toEqual([0, 0, 0, 0, 0, 0, 0xf0, 0x3f, 2, 0xc2, 0xb5]);
});
