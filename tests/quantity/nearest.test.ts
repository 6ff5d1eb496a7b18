import { expect, test } from 'vitest';
import { nearest } from '../../src/quantity/nearest.ts';

const names = ['kohm', 'kOhm', 'mHz', 'MHz', 'V', 'normal', 'uniform'];

test.each([
  ['kOhmm', ['kOhm']],
  ['KOHM', ['kOhm', 'kohm']],
  ['mhz', ['mHz', 'MHz']],
  ['noraml', ['normal']],
  ['normaly', ['normal']],
  ['x', []],
  ['unrelated', []],
  ['n'.repeat(33), []],
])('%s', (word, meant) => expect(nearest(word, names)).toEqual(meant));
