import { expect, test } from 'vitest';
import { markSvg, signalSvg, verdictWords } from '../../src/figures/marks.ts';
import { qrSvg } from '../../src/figures/qr.ts';
import type { Verdict } from '../../src/packet/text.ts';

test('every verdict has a mark and a word of its own, in the colour of the text', () => {
  const verdicts = Object.keys(verdictWords) as Verdict[];
  expect(new Set(verdicts.map(markSvg)).size).toBe(5);
  for (const verdict of verdicts) {
    expect(markSvg(verdict)).toContain('currentColor');
    expect(markSvg(verdict)).not.toContain('<text');
  }
});

test('only a notice has no triangle', () => {
  expect(signalSvg('notice')).toBe('');
  for (const level of ['danger', 'warning', 'caution'] as const) expect(signalSvg(level)).toContain('<path');
});

test('the code of a digest has the three finder squares, drawn as runs of dark modules', () => {
  const svg = qrSvg('9c417be205da3f88'.repeat(4), 'digest');
  const size = Number(/viewBox="0 0 (\d+) /.exec(svg)![1]);
  const runs = [...svg.matchAll(/M(\d+) (\d+)h(\d+)/g)].map(([, x, y, length]) => [
    Number(x),
    Number(y),
    Number(length),
  ]);
  expect(runs).toContainEqual([0, 0, 7]);
  expect(runs).toContainEqual([size - 7, 0, 7]);
  expect(runs).toContainEqual([0, size - 7, 7]);
  expect(runs.every(([x, , length]) => x! + length! <= size)).toBe(true);
});
