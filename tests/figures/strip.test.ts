import { describe, expect, test } from 'vitest';
import { clamped, placeNumbers, position, stripSvg } from '../../src/figures/strip.ts';
import { textWidth } from '../../src/figures/text-width.ts';
import type { Strip } from '../../src/packet/strip.ts';

const strip: Strip = {
  scale: [-20, 120],
  worst: [-6, 92],
  typical: 29,
  spread: [50, 64, 78],
  limits: [{ at: 106, forbidden: 'above' }],
  target: 99,
  labels: [
    { at: -6, text: '−6 °C' },
    { at: 92, text: '92 °C', worst: true },
  ],
  says: 'From −6 to 92 °C; the limit is 106 °C.',
};

/** Attributes of the first element of a class. */
function element(svg: string, name: string): Record<string, string> {
  const tag = svg.match(new RegExp(`<[a-z]+ class="${name}"[^>]*>`))?.[0];
  if (!tag) throw new Error(`no ${name} in ${svg}`);
  return Object.fromEntries([...tag.matchAll(/([a-z0-9-]+)="([^"]*)"/g)].map(([, key, value]) => [key!, value!]));
}

describe('places on the scale', () => {
  test('are per cent of its width, also beyond its ends', () => {
    expect(position([0, 40], 10)).toBe(25);
    expect(position([-20, 120], 120)).toBe(100);
    expect(position([0, 40], 60)).toBe(150);
  });

  test('stop at the end, and say that they go on', () => {
    expect(clamped([0, 40], 60)).toEqual({ at: 100, beyond: true });
    expect(clamped([0, 40], -1)).toEqual({ at: 0, beyond: true });
    expect(clamped([0, 40], 40)).toEqual({ at: 100, beyond: false });
    expect(clamped([0, 40], Number.POSITIVE_INFINITY)).toEqual({ at: 100, beyond: true });
  });
});

describe('the range rule', () => {
  const svg = stripSvg(strip, 'row');

  test('draws each mark where its number lies', () => {
    expect(element(svg, 'strip-worst')).toMatchObject({ x1: '10%', x2: '80%' });
    expect(element(svg, 'strip-spread')).toMatchObject({ x: '50%', width: '20%' });
    expect(element(svg, 'strip-median')).toMatchObject({ x1: '60%', x2: '60%' });
    expect(element(svg, 'strip-typical')).toMatchObject({ cx: '35%' });
    expect(element(svg, 'strip-target')).toMatchObject({ x1: '85%', y2: '100%' });
    expect(svg).toContain('<svg x="90%" y="0" overflow="visible">');
  });

  test('says itself to those who cannot see it, and no markup escapes from the words', () => {
    expect(element(stripSvg({ ...strip, says: '"a" < b & c' }, 'row'), 'strip strip-row')['aria-label']).toBe(
      '&quot;a&quot; &lt; b &amp; c',
    );
    const hostile = stripSvg({ ...strip, labels: [{ at: 0, text: '<script>' }] }, 'margin');
    expect(hostile).toContain('&lt;script&gt;');
    expect(hostile).not.toContain('<script');
  });

  test('ends in an arrow head where the worst case leaves the scale', () => {
    const beyond = stripSvg({ ...strip, worst: [-6, 500] }, 'row');
    expect(beyond.match(/strip-arrow/g)).toHaveLength(1);
    expect(beyond.match(/strip-worst-end/g)).toHaveLength(1);
    expect(svg).not.toContain('strip-arrow');
  });

  test('has one end stroke where only one end is a worst case', () => {
    expect(stripSvg({ ...strip, oneEnded: true }, 'row').match(/strip-worst-end/g)).toHaveLength(1);
  });

  test('leaves out a limit and a target that the scale does not show', () => {
    const narrow = stripSvg({ ...strip, scale: [0, 80], worst: [10, 70] }, 'row');
    expect(narrow).not.toContain('strip-wall');
    expect(narrow).not.toContain('strip-target');
  });

  test('shows the room of a part, open where nothing stops it', () => {
    const room = stripSvg(
      { scale: [-40, 40], room: [-20, Number.POSITIVE_INFINITY], limits: [], labels: [], says: '' },
      'row',
    );
    expect(element(room, 'strip-room')).toMatchObject({ x: '25%', width: '75%' });
    expect(room.match(/strip-room-arrow/g)).toHaveLength(1);
    expect(room).not.toMatch(/NaN|Infinity/);
  });
});

describe('numbers under the ends', () => {
  const width = 181;
  const extents = (labels: Strip['labels'], scale: Strip['scale'] = [0, 10]) =>
    placeNumbers({ scale, limits: [], labels, says: '' }, width).map(({ at, text, worst }) => {
      const half = textWidth(text, 10, worst ? 600 : 400) / 2;
      return [(at / 100) * width - half, (at / 100) * width + half] as const;
    });

  test('stand under their values where there is room', () => {
    const [only] = placeNumbers({ scale: [0, 10], limits: [], labels: [{ at: 5, text: '5 V' }], says: '' }, width);
    expect(only!.at).toBeCloseTo(50, 6);
  });

  test('stay inside the strip', () => {
    for (const [left, right] of extents([
      { at: 0, text: '0.028 W' },
      { at: 10, text: '9.02 W', worst: true },
    ])) {
      expect(left).toBeGreaterThanOrEqual(0);
      expect(right).toBeLessThanOrEqual(width);
    }
  });

  test.each([5, 9.9, 0.1])('keep apart when their values are close, at %s of 10', (at) => {
    const [first, second] = extents([
      { at, text: '100.25 °C' },
      { at: at + 0.05, text: '100.75 °C', worst: true },
    ]);
    expect(second![0] - first![1]).toBeGreaterThan(4);
    expect(first![0]).toBeGreaterThanOrEqual(0);
    expect(second![1]).toBeLessThanOrEqual(width);
  });
});
