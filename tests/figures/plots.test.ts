import { describe, expect, test } from 'vitest';
import { curve } from '../../src/figures/curve.ts';
import { draw } from '../../src/figures/draw.ts';
import { histogram } from '../../src/figures/histogram.ts';
import { histogramFrame } from '../../src/figures/histogram-frame.ts';
import { plotSvg } from '../../src/figures/plot.ts';
import { textWidth } from '../../src/figures/text-width.ts';
import { colours } from '../../src/figures/theme.ts';
import { ticks, widened } from '../../src/figures/ticks.ts';
import type { Curve, Histogram } from '../../src/packet/plot.ts';

const bell: Histogram = {
  kind: 'histogram',
  title: 'Trip current, A peak',
  edges: [119, 121, 123, 125, 127, 129, 131],
  counts: [4, 30, 66, 70, 28, 2],
  limits: [
    { at: 103.9, forbidden: 'below', label: 'must carry 103.9 A' },
    { at: 144, forbidden: 'above', label: 'must save the bridge, 144 A' },
  ],
  quantiles: [
    { at: 120.1, label: '0.135 %' },
    { at: 125.2, label: 'median' },
    { at: 130.5, label: '99.865 %' },
  ],
  worst: [{ at: 135.9, label: 'worst 135.9' }],
};

const slope: Curve = {
  kind: 'curve',
  xTitle: 'Phase current, A',
  yTitle: 'Temperature, °C',
  points: [5, 30, 50, 70].map((x) => ({ x, low: x / 10, typical: 20 + x / 3, high: 45 + x * 0.79 })),
  typicalLabel: 'typical parts',
  limits: [{ at: 110, forbidden: 'above', label: 'limit 110 °C' }],
  target: { at: 99, label: 'target' },
  ends: [{ x: 70, y: 100.3, label: 'worst 100.3 °C' }],
  cases: [{ from: 5, to: 25, label: 'cruise' }],
};

const words = (svg: string) => [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text);

describe('ticks', () => {
  test('are round numbers inside the scale', () => {
    expect(ticks(-12, 74, 5)).toEqual([0, 20, 40, 60]);
    expect(ticks(0, 0.35, 4)).toEqual([0, 0.1, 0.2, 0.3]);
    expect(ticks(-20, 20, 2)).toEqual([-20, 0, 20]);
  });

  test('widen a scale to whole steps', () => {
    expect(widened(-9.8, 100.3, 6)).toEqual([-20, 120]);
  });
});

describe('a histogram', () => {
  const frame = histogramFrame(bell, 446);

  test('has a scale that shows bars, limits and worst cases', () => {
    expect(frame.from).toBeLessThan(103.9);
    expect(frame.to).toBeGreaterThan(144);
    expect(frame.pixel(frame.from)).toBe(0);
    expect(frame.pixel(frame.to)).toBeCloseTo(frame.inner, 9);
    expect(frame.left + frame.inner + frame.right).toBe(446);
  });

  test('makes room for words that hang over its ends', () => {
    const { limits: _, worst: __, ...rest } = bell;
    const close = histogramFrame({ ...rest, limits: [], worst: [{ at: 131.5, label: 'worst 131.5' }] }, 314);
    const wide = textWidth('worst 131.5', 10, 600);
    expect(close.pixel(131.5) + wide).toBeLessThanOrEqual(close.inner + close.right);
    expect(close.pixel(120.1) - textWidth('0.135 %', 10) - 3).toBeGreaterThanOrEqual(-close.left);
  });

  test('draws a bar for each class that holds boards, and names limits, quantiles and worst case', async () => {
    const svg = await plotSvg({ ...bell, counts: [0, 30, 66, 70, 28, 0] }, 446, 130, 'trip', 'Trip current');
    const bars = svg.match(/<path[^>]*fill="var\(--verdigris-tint\)"[^>]*>/g);
    expect(bars).toHaveLength(4);
    expect(words(svg)).toEqual(
      expect.arrayContaining([
        'must carry 103.9 A',
        'must save the bridge, 144 A',
        'median',
        '99.865 %',
        'worst 135.9',
      ]),
    );
    expect(words(svg)).toContain('Trip current, A peak');
  });

  test('has rows for worst case, root-sum-square and boards on the same scale', async () => {
    const intervals = {
      worst: [115.1, 135.9],
      typical: 125.2,
      rootSumSquare: [120, 130],
      spread: [120, 125, 131],
    } as const;
    const svg = await draw(histogram({ ...bell, intervals }, 446, 130), 'rows', '');
    expect(words(svg)).toEqual(expect.arrayContaining(['worst case', 'root-sum-square', 'simulated']));
    expect(svg).toContain('viewBox="0 0 446 264"');
  });

  test('of a single value still has a scale', () => {
    const single = histogramFrame({ ...bell, edges: [5, 5], counts: [10], limits: [], quantiles: [], worst: [] }, 300);
    expect(single.to).toBeGreaterThan(single.from);
    expect(Number.isFinite(single.pixel(5))).toBe(true);
  });
});

describe('a curve', () => {
  test('draws band, typical line, limit and cases, each named where it runs', async () => {
    const svg = await draw(curve(slope, 446, 220), 'junction', '');
    expect(words(svg)).toEqual(
      expect.arrayContaining([
        'typical parts',
        'limit 110 °C',
        'target',
        'worst 100.3 °C',
        'cruise',
        'worst-case band',
      ]),
    );
    expect(svg).toContain('stroke-dasharray="5,2.5"');
    expect(svg).not.toContain('NaN');
  });
});

describe('drawing', () => {
  const spec = { width: 100, height: 40, data: { values: [{ a: 1 }, { a: 2 }] }, mark: { type: 'line', clip: true } };
  const encoding = { x: { field: 'a', type: 'quantitative' }, y: { field: 'a', type: 'quantitative' } };

  test('takes its colours from the page and its text width from the real face', async () => {
    const svg = await draw(histogram(bell, 446, 130), 'plot', 'Trip "current"');
    for (const colour of Object.values(colours)) expect(svg).not.toContain(colour);
    expect(svg).toContain('var(--copper)');
    expect(svg).toMatch(/^<svg class="plot" role="img" aria-label="Trip &quot;current&quot;" viewBox=/);
    // STIX Two Text's digits are 495 thousandths of an em wide.
    expect(textWidth('0000', 10)).toBeCloseTo(19.8, 1);
  });

  test('gives each plot names of its own and the same bytes every time', async () => {
    const [first, second] = [
      await draw({ ...spec, encoding }, 'one', ''),
      await draw({ ...spec, encoding }, 'two', ''),
    ];
    expect(first).toContain('id="one-1"');
    expect(second).toContain('clip-path="url(#two-1)"');
    expect(second).toBe(first.replaceAll('one-', 'two-'));
  });
});
