import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { hull, subtractRanges } from '../ranges.ts';
import { alike, truthAt } from './demands.ts';

function chosen(c: Interval, a: Interval, b: Interval): Interval {
  const of = c.lo > 0 ? a : c.hi < 1 ? b : hull(a, b);
  return c.certain || !of.certain ? of : { ...of, certain: false };
}

/**
 * One of two, by a comparison. Both sides are computed; only the chosen one counts. Where the condition is open, the
 * slope along it is `a − b`: the jump, which together with a comparison's own open slope bounds every difference.
 */
export const choose: Operation = {
  arity: [3, 3],
  usage: 'if(condition, a, b)',
  says: 'a where the condition holds, else b',
  dimension: (args) => {
    truthAt(args, 0);
    return alike(args, [1, 2]);
  },
  value: ([c, a, b]) => (c === 1 ? a! : c === 0 ? b! : Number.NaN),
  range: ([c, a, b]) => chosen(c!, a!, b!),
  slope: ([c, a, b]) => [a! - b!, c!, 1 - c!],
  slopeRange: ([c, a, b]) => [subtractRanges(a!, b!), c!, { lo: 1 - c!.hi, hi: 1 - c!.lo, certain: c!.certain }],
  code: ([c, a, b]) => `${c} === 1 ? ${a} : ${c} === 0 ? ${b} : NaN`,
  tex: ([c, a, b]) => {
    const rows = `${a!.tex} & \\text{if } ${c!.tex} \\\\ ${b!.rows ?? `${b!.tex} & \\text{otherwise}`}`;
    return { tex: `\\begin{cases} ${rows} \\end{cases}`, binds: 'sum', rows };
  },
};
