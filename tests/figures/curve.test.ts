import { describe, expect, test } from 'vitest';
import { curve } from '../../src/figures/curve.ts';
import { curveFrame } from '../../src/figures/curve-frame.ts';
import { curveLabels } from '../../src/figures/curve-labels.ts';
import { textWidth } from '../../src/figures/text-width.ts';
import { decadeTicks } from '../../src/figures/ticks.ts';
import type { Curve } from '../../src/packet/plot.ts';

const plot = (more: Partial<Curve> = {}): Curve => ({
  kind: 'curve',
  xTitle: 'Phase current, A',
  yTitle: 'Temperature, °C',
  points: [5, 20, 40, 55, 70].map((x) => ({ x, low: x / 10, typical: 20 + x / 3, high: 45 + x * 0.79 })),
  typicalLabel: 'all else typical',
  limits: [{ at: 110, forbidden: 'above', label: 'limit 110 °C' }],
  ends: [{ x: 70, y: 100.3, label: 'worst 100.3 °C' }],
  cases: [],
  ...more,
});

test('ticks of decades are 1, 2 and 5 where there is room, else whole decades', () => {
  expect(decadeTicks(0.8, 120, 8)).toEqual([1, 2, 5, 10, 20, 50, 100]);
  expect(decadeTicks(1, 1e6, 8)).toEqual([1, 10, 100, 1000, 1e4, 1e5, 1e6]);
  expect(decadeTicks(1, 1e12, 4)).toEqual([1, 1e3, 1e6, 1e9, 1e12]);
});

test('an axis of decades puts equal ratios at equal distances', () => {
  const points = [1, 10, 100].map((x) => ({ x, low: x, typical: 2 * x, high: 4 * x }));
  const frame = curveFrame(plot({ points, limits: [], ends: [], decades: { x: true, y: true } }), 400, 200);
  expect(frame.columnOf(10) - frame.columnOf(1)).toBeCloseTo(frame.columnOf(100) - frame.columnOf(10), 9);
  expect(frame.rowOf(2) - frame.rowOf(20)).toBeCloseTo(frame.rowOf(20) - frame.rowOf(200), 9);
  expect(frame.between(4, 100)).toBeCloseTo(20, 9);
});

describe('words in a curve', () => {
  type Word = { mark: { text: string; dx: number; dy: number; align: string; fontWeight?: 400 | 600 } } & {
    encoding: { x: { datum: number }; y: { datum: number } };
  };
  const boxes = (of: Curve, width: number) => {
    const frame = curveFrame(of, width, 150);
    return (curveLabels(of, frame) as unknown as Word[]).map(({ mark, encoding }) => {
      const wide = textWidth(mark.text, 10, mark.fontWeight ?? 400);
      const anchor = frame.columnOf(encoding.x.datum) + mark.dx;
      const left = mark.align === 'left' ? anchor : mark.align === 'right' ? anchor - wide : anchor - wide / 2;
      const row = frame.rowOf(encoding.y.datum) + mark.dy;
      return { text: mark.text, left, right: left + wide, top: row - 5, bottom: row + 5, frame };
    });
  };

  test.each([314, 330, 446])('stand apart and inside the picture at %d px', (width) => {
    const found = boxes(plot(), width);
    expect(found.map(({ text }) => text).sort()).toEqual([
      'all else typical',
      'limit 110 °C',
      'worst 100.3 °C',
      'worst-case band',
    ]);
    for (const [i, a] of found.entries()) {
      expect(a.left).toBeGreaterThanOrEqual(-a.frame.left);
      expect(a.right).toBeLessThanOrEqual(a.frame.inner + 8);
      for (const b of found.slice(i + 1)) {
        const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
        expect(apart, `${a.text} and ${b.text}`).toBe(true);
      }
    }
  });
  test('the band has no name where it is too thin for one', () => {
    const thin = [5, 40, 70].map((x) => ({ x, low: x, typical: x + 0.1, high: x + 0.2 }));
    expect(boxes(plot({ points: thin, ends: [] }), 314).map(({ text }) => text)).not.toContain('worst-case band');
  });
});

test('lines end where a run ends, and a limit that moves is a hatched line', () => {
  const points = [
    { x: 1, low: 1, typical: 2, high: 3, limit: 9, run: 0 },
    { x: 2, low: 1, typical: 2, high: 3, limit: 8, run: 0 },
    { x: 4, low: 2, typical: 3, high: 4, limit: 7, run: 1 },
    { x: 5, low: 2, typical: 3, high: 4, limit: 6, run: 1 },
  ];
  const spec = JSON.stringify(
    curve(plot({ points, limits: [], ends: [], limitLine: { forbidden: 'above', label: 'limit' } }), 314, 150),
  );
  expect(spec).toContain('"detail":{"field":"run"}');
  expect(spec).toContain('"y":{"field":"limit"}');
  expect(spec).toContain('"x2Offset":4.5,"y2Offset":-4.5');
});
