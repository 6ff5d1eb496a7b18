import { pureNumber } from '../../quantity/dimension.ts';
import type { Interval } from '../interval.ts';
import type { Operation } from '../operation.ts';
import { addRanges, divideRanges, holdsZero, negateRange, range, squareRange, WHOLE } from '../ranges.ts';
import { libraryDown, libraryUp } from '../rounding.ts';
import { called } from '../tex.ts';
import { alike } from './demands.ts';

const AROUND = libraryUp(Math.PI);

/** Whether the box touches the half line where the angle jumps from π to −π. */
const touchesCut = (y: Interval, x: Interval): boolean => x.lo < 0 && holdsZero(y);

/** Away from the jump and the origin the angles furthest apart stand at corners of the box. */
function angleRange(y: Interval, x: Interval): Interval {
  const certain = y.certain && x.certain;
  if (holdsZero(y) && holdsZero(x)) return range(-AROUND, AROUND, false);
  if (touchesCut(y, x)) return range(-AROUND, AROUND, certain);
  const a = Math.atan2(y.lo, x.lo);
  const b = Math.atan2(y.lo, x.hi);
  const c = Math.atan2(y.hi, x.lo);
  const d = Math.atan2(y.hi, x.hi);
  return range(libraryDown(Math.min(a, b, c, d)), libraryUp(Math.max(a, b, c, d)), certain);
}

export const atan2: Operation = {
  arity: [2, 2],
  usage: 'atan2(y, x)',
  says: 'Angle of the point (x, y), in radians, between -pi and pi',
  dimension: (args) => {
    alike(args);
    return pureNumber;
  },
  value: ([y, x]) => Math.atan2(y!, x!),
  range: ([y, x]) => angleRange(y!, x!),
  slope: ([y, x]) => {
    const square = y! * y! + x! * x!;
    return [x! / square, -y! / square];
  },
  slopeRange: ([y, x]) => {
    if (touchesCut(y!, x!)) return [WHOLE, WHOLE];
    const square = addRanges(squareRange(y!), squareRange(x!));
    return [divideRanges(x!, square), negateRange(divideRanges(y!, square))];
  },
  code: ([y, x]) => `Math.atan2(${y}, ${x})`,
  tex: (args) => called('\\operatorname{atan2}', args),
};
