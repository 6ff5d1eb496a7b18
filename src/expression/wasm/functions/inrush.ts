import { FAR, NEAR, SERIES } from '../../operations/inrush.ts';
import { bits, f64x2, twice } from '../vectors.ts';
import { atan2 } from './arc.ts';
import { calling, elementary } from './elementary.ts';
import { exp } from './exp.ts';
import { ln } from './ln.ts';

/** The operation of that name, with our own arc, logarithm and exponential: within some ten units in the last place. */
export const inrush = elementary(1, (code, given) => {
  const z = code.let(f64x2.min(given, twice(FAR)));
  const x = code.let(f64x2.sub(z, twice(1)));
  const near = code.let(
    SERIES.slice(0, -1).reduceRight((sum, c) => f64x2.add(f64x2.mul(sum, x), twice(c)), twice(SERIES.at(-1)!)),
  );
  const side = code.let(f64x2.mul(f64x2.sqrt(f64x2.abs(x)), f64x2.sqrt(f64x2.add(twice(1), z))));
  const turned = bits.select(calling(atan2)(side, z), calling(ln)(f64x2.add(z, side)), f64x2.lt(z, twice(1)));
  const away = f64x2.div(turned, side);
  const angle = bits.select(near, away, f64x2.lt(f64x2.abs(x), twice(NEAR)));
  const value = f64x2.mul(f64x2.mul(twice(2), z), calling(exp)(f64x2.neg(f64x2.mul(z, angle))));
  return bits.select(value, twice(NaN), f64x2.ge(z, twice(0)));
});
