import type { OperationName } from '../expression/operations/index.ts';
import { NEAR, SERIES } from '../expression/operations/inrush.ts';

/**
 * A step as NumPy calls that leave the result in `out`, which may be an argument's array; `t` is a further one to work
 * in.
 */
type Writer = (out: string, args: readonly string[], t: string) => string[];

const call =
  (name: string): Writer =>
  (out, args) => [`np.${name}(${args.join(', ')}, out=${out})`];
const truth =
  (name: string): Writer =>
  (out, args) => [`np.copyto(${out}, np.${name}(${args.join(', ')}))`];

/** The fastest form of each operation that NumPy offers, without arrays of its own where it can be had. */
export const numpyWriters: Readonly<Record<OperationName, Writer>> = {
  add: call('add'),
  sum: call('add'),
  subtract: call('subtract'),
  multiply: call('multiply'),
  divide: call('divide'),
  power: call('power'),
  negate: call('negative'),
  square: call('square'),
  sqrt: call('sqrt'),
  abs: call('absolute'),
  min: call('minimum'),
  max: call('maximum'),
  hypot: (out, [a, b], t) => [
    `np.multiply(${a}, ${a}, out=${t})`,
    `np.multiply(${b}, ${b}, out=${out})`,
    `np.add(${t}, ${out}, out=${out})`,
    `np.sqrt(${out}, out=${out})`,
  ],
  parallel: (out, [a, b], t) => [
    `np.add(${a}, ${b}, out=${t})`,
    `np.multiply(${a}, ${b}, out=${out})`,
    `np.divide(${out}, ${t}, out=${out})`,
  ],
  share: (out, [a, b], t) => [`np.add(${a}, ${b}, out=${t})`, `np.divide(${a}, ${t}, out=${out})`],
  exp: call('exp'),
  ln: call('log'),
  log10: call('log10'),
  log2: call('log2'),
  sin: call('sin'),
  cos: call('cos'),
  tan: call('tan'),
  atan: call('arctan'),
  atan2: call('arctan2'),
  floor: call('floor'),
  ceil: call('ceil'),
  round: (out, [a]) => [`np.add(${a}, 0.5, out=${out})`, `np.floor(${out}, out=${out})`],
  interp: (out, [x, ...points]) => {
    const every = (odd: number) => points.filter((_, i) => i % 2 === odd).join(', ');
    return [`${out}[:] = np.interp(${x}, [${every(0)}], [${every(1)}])`];
  },
  inrush: (out, [z], t) => {
    const near = `np.polyval([${SERIES.toReversed().join(', ')}], ${z} - 1)`;
    const away = `np.where(${z} < 1, np.arctan2(${t}, ${z}), np.log(${z} + ${t})) / ${t}`;
    const angle = `np.where(np.abs(${z} - 1) < ${NEAR}, ${near}, ${away})`;
    return [`np.sqrt(np.abs((1 - ${z}) * (1 + ${z})), out=${t})`, `${out}[:] = 2 * ${z} * np.exp(-${z} * ${angle})`];
  },
  if: (out, [c, a, b]) => [`${out}[:] = np.where(${c} != 0, ${a}, ${b})`],
  less: truth('less'),
  lessEqual: truth('less_equal'),
  greater: truth('greater'),
  greaterEqual: truth('greater_equal'),
  and: call('multiply'),
  or: call('maximum'),
  not: (out, [a]) => [`np.subtract(1.0, ${a}, out=${out})`],
};
