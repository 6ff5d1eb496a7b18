import { describe, expect, test } from 'vitest';
import { correlationText } from '../../src/packet/correlation.ts';
import { factored } from '../../src/spec/factored.ts';
import { circuit } from '../analysis/found.ts';
import { boardFrom, read, spec as specText } from './spec-text.ts';

const spec = (correlations: string, given = { a: '1 sd 0.1', b: '2 sd 0.1', c: '3 sd 0.1', d: '4 ±1 %' }) =>
  `${circuit(given, { y: ['a + b + c + d', '1'] })}    correlations: ${correlations}\n`;

test('both of a pair name each other', () => {
  const board = boardFrom(spec('{ a with b: 0.6, c with b: -0.25 }'));
  expect(correlationText(board, 'x.b')).toBe(', r(a) 0.60, r(c) −0.25');
  expect(correlationText(board, 'x.a')).toBe(', r(b) 0.60');
  expect(correlationText(board, 'x.d')).toBe('');
});

describe('what cannot be is refused at its place', () => {
  test.each([
    ['{ a with d: 0.5 }', 'cannot-correlate', '`d`'],
    ['{ a with e: 0.5 }', 'cannot-correlate', '`e`'],
    ['{ a and b: 0.5 }', 'not-a-correlation', '`a and b`'],
    ['{ a with a: 0.5 }', 'not-a-correlation', '`a with a`'],
    ['{ a with b: 1.5 }', 'not-a-coefficient', '`1.5`'],
    ['{ a with b: 0.5 V }', 'not-a-coefficient', '`0.5 V`'],
    ['{ a with b: 0.9, b with c: 0.9, a with c: -0.9 }', 'impossible-correlations', 'correlations that cannot'],
  ])('%s', (text, code, found) => {
    const problems = read(specText(spec(text))).problems;
    expect(problems.map((problem) => problem.code)).toEqual([code]);
    expect(problems[0]!.found).toContain(found);
  });
});

describe('factored', () => {
  test('gives back the matrix', () => {
    const matrix = [
      [1, 0.5, -0.2],
      [0.5, 1, 0.3],
      [-0.2, 0.3, 1],
    ];
    const lower = factored(matrix)!;
    matrix.forEach((row, i) => {
      row.forEach((entry, j) => {
        expect(lower[i]!.reduce((sum, x, k) => sum + x * lower[j]![k]!, 0)).toBeCloseTo(entry, 14);
      });
    });
  });
  test('one value that is another', () => {
    expect(
      factored([
        [1, 1],
        [1, 1],
      ]),
    ).toEqual([
      [1, 0],
      [1, 0],
    ]);
    expect(
      factored([
        [1, 1, 0],
        [1, 1, 0.5],
        [0, 0.5, 1],
      ]),
    ).toBeUndefined();
  });
});
