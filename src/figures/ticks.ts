/**
 * Round numbers inside `from` to `to`, steps of 1, 2 or 5 times a power of ten, about `count` of them.
 * `ticks(-12, 74, 5)` → `[0, 20, 40, 60]`
 */
export function ticks(from: number, to: number, count: number): number[] {
  const step = roundStep((to - from) / count);
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => tidy((first + index) * step, step));
}

/** `from` to `to`, widened to whole steps of `ticks`. `widened(-9.8, 100.3, 6)` → `[-20, 120]` */
export function widened(from: number, to: number, count: number): [from: number, to: number] {
  const step = roundStep((to - from) / count);
  return [tidy(Math.floor(from / step + 1e-9) * step, step), tidy(Math.ceil(to / step - 1e-9) * step, step)];
}

/**
 * Round numbers from `from` to `to` on an axis of decades, about `count` of them: 1, 2 and 5 of each decade where there is room,
 * else whole decades. `decadeTicks(0.8, 120, 8)` → `[1, 2, 5, 10, 20, 50, 100]`
 */
export function decadeTicks(from: number, to: number, count: number): number[] {
  const [first, last] = [Math.floor(Math.log10(from)), Math.ceil(Math.log10(to))];
  const each = count / Math.log10(to / from);
  const digits = each >= 3 ? [1, 2, 5] : [1];
  const step = each >= 1 ? 1 : Math.ceil(1 / each);
  return Array.from({ length: last - first + 1 }, (_, i) => first + i)
    .filter((power) => power % step === 0)
    .flatMap((power) => digits.map((digit) => Number(`${digit}e${power}`)))
    .filter((tick) => tick >= from * (1 - 1e-9) && tick <= to * (1 + 1e-9));
}

function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = [1, 2, 5].find((candidate) => candidate * power >= rough * (1 - 1e-9)) ?? 10;
  return factor * power;
}

// 3 * 0.1 is 0.30000000000000004: cut to what the step can tell apart.
function tidy(value: number, step: number): number {
  return Number(value.toFixed(Math.min(100, Math.max(0, 2 - Math.floor(Math.log10(step))))));
}
