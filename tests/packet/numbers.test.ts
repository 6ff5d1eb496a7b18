import { describe, expect, test } from 'vitest';
import { clopperPearson } from '../../src/analysis/statistics.ts';
import { failText, percentText, yieldText } from '../../src/packet/numbers.ts';

const text = (printed: string): string => printed.replaceAll('\u00a0', ' ');

describe('boards that fail', () => {
  // 0 of n at 95 %: the rule of three, 3/n, of which the exact value is 1 − 0.05^(1/n).
  test.each([
    [0, 100_000, '≤ 30 ppm'],
    [0, 1000, '≤ 2992 ppm'],
    [0, 100, '≤ 3.0 %'],
    [9, 100_000, '41–171 ppm'],
    [1, 1_000_000, '0.02–5.58 ppm'],
    [1200, 10_000, '11.3–12.7 %'],
    [100, 100, '≥ 97.0 %'],
  ])('%d of %d', (hits, trials, said) => {
    expect(text(failText(clopperPearson(hits, trials)))).toBe(said);
  });
  test('is never printed as none', () => {
    for (const hits of [0, 1, 5]) expect(failText(clopperPearson(hits, 1e6))).not.toMatch(/^0–|^≤\u00a00\u00a0/);
  });
});

describe('yield', () => {
  test.each([
    [100_000, 100_000, '99.997 % or more'],
    [1000, 1000, '99.7 % or more'],
    [0, 1000, '0.300 % or less'],
  ])('%d of %d', (holding, trials, said) => {
    expect(text(yieldText({ yield: clopperPearson(holding, trials) }))).toBe(said);
  });
  test('an interval is rounded outward', () => {
    expect(text(yieldText({ yield: { estimate: 0.99, low: 0.98923, high: 0.99051 } }))).toBe('98.9 to 99.1 %');
  });
  test('says so when there is none', () => {
    expect(yieldText({ yield: null })).toMatch(/not assessed/);
  });
});

test('margins are rounded toward failure', () => {
  expect(text(percentText(0.0558))).toBe('5.5 %');
  expect(text(percentText(-0.00001))).toBe('−0.1 %');
});
