import { expect, test } from 'vitest';
import { refined } from '../../../src/analysis/sweep/refine.ts';

const mean = (a: number, b: number) => (a + b) / 2;
const curve = (f: (x: number) => number) => (x: number) => ({ x, lines: [f(x)] });

test('a straight line keeps the points it began with', () => {
  const points = refined(
    [0, 1, 4],
    curve((x) => 3 * x - 1),
    mean,
    { blur: 0.004, most: 30 },
  );
  expect(points.map(({ x }) => x)).toEqual([0, 1, 4]);
});

test('a bend is followed until the line drawn through the points is off by less than the blur', () => {
  const f = (x: number) => 1 / (0.02 + x ** 2);
  const points = refined([-1, -0.5, 0, 0.5, 1], curve(f), mean, { blur: 0.01, most: 200 });
  const height = f(0) - f(1);
  for (let x = -1; x <= 1; x += 0.001) {
    const right = points.findIndex((point) => point.x >= x);
    const [a, b] = [points[Math.max(0, right - 1)]!, points[Math.max(1, right)]!];
    const drawn = a.lines[0]! + ((b.lines[0]! - a.lines[0]!) * (x - a.x)) / (b.x - a.x);
    expect(Math.abs(drawn - f(x))).toBeLessThan(0.02 * height);
  }
  expect(points.length).toBeLessThan(60);
});

test('places without a value are passed over', () => {
  const points = refined([0, 1, 2], (x) => (x < 1 ? undefined : { x, lines: [x] }), mean, { blur: 0.01, most: 10 });
  expect(points.map(({ x }) => x)).toEqual([1, 2]);
});
