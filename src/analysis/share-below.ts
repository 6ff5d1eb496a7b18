import type { SpreadFinding } from './findings.ts';

/** Share of the simulated boards that read less, 0 … 1. */
export function shareBelow({ histogram: { from, to, counts } }: SpreadFinding, value: number): number {
  const all = counts.reduce((a, b) => a + b, 0);
  const at = ((value - from) / (to - from)) * counts.length;
  if (!(at > 0)) return 0;
  if (at >= counts.length) return 1;
  const whole = Math.floor(at);
  const below = counts.slice(0, whole).reduce((a, b) => a + b, 0) + counts[whole]! * (at - whole);
  return below / all;
}
