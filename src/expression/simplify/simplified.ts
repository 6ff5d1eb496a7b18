import type { TapeBuilder } from '../tape-builder.ts';
import { productTogether, quotientTogether } from './quotients.ts';
import { sumTogether } from './sums.ts';

/**
 * The slot of something simpler that is the same for every input, or undefined. Each rule holds for all real numbers
 * where the original has a value; a divisor that cancels was noted by the builder before. The aim is that a symbol
 * stands once: a range is exact where each input acts along one way only.
 */
export function simplified(builder: TapeBuilder, operation: string, args: readonly number[]): number | undefined {
  return Object.hasOwn(RULES, operation) ? RULES[operation]!(builder, args[0]!, args[1]!, args[2]!) : undefined;
}

type Rule = (builder: TapeBuilder, a: number, b: number, c: number) => number | undefined;

const RULES: Readonly<Record<string, Rule>> = {
  add: (builder, a, b) => {
    if (isConstant(builder, a, 0)) return b;
    if (isConstant(builder, b, 0)) return a;
    const [left, right] = [negated(builder, a), negated(builder, b)];
    if (right !== undefined) return builder.call('subtract', [a, right]);
    return left === undefined ? sumTogether(builder, a, b, 1) : builder.call('subtract', [b, left]);
  },
  subtract: (builder, a, b) => {
    if (a === b) return builder.constant(0);
    if (isConstant(builder, b, 0)) return a;
    if (isConstant(builder, a, 0)) return builder.call('negate', [b]);
    const right = negated(builder, b);
    return right === undefined ? sumTogether(builder, a, b, -1) : builder.call('add', [a, right]);
  },
  negate: (builder, a) => negated(builder, a),
  multiply: (builder, a, b) => {
    if (isConstant(builder, a, 1)) return b;
    if (isConstant(builder, b, 1)) return a;
    if (isConstant(builder, a, -1)) return builder.call('negate', [b]);
    if (isConstant(builder, b, -1)) return builder.call('negate', [a]);
    return a === b ? builder.call('square', [a]) : productTogether(builder, a, b);
  },
  divide: (builder, a, b) => {
    if (isConstant(builder, b, 0)) return undefined;
    if (a === b) return builder.constant(1);
    return isConstant(builder, b, 1) ? a : quotientTogether(builder, a, b);
  },
  power: (builder, a, b) => POWERS.find(([exponent]) => isConstant(builder, b, exponent))?.[1](builder, a),
  min: (_, a, b) => (a === b ? a : undefined),
  max: (_, a, b) => (a === b ? a : undefined),
  if: (builder, condition, a, b) => {
    if (isConstant(builder, condition, 1)) return a;
    return isConstant(builder, condition, 0) || a === b ? b : undefined;
  },
};

/** Whole powers as squares, which know that they are not below zero, and are quicker than a power. */
const POWERS: readonly (readonly [exponent: number, make: (builder: TapeBuilder, a: number) => number])[] = [
  [0, (builder) => builder.constant(1)],
  [1, (_, a) => a],
  [2, (builder, a) => builder.call('square', [a])],
  [4, (builder, a) => builder.call('square', [builder.call('square', [a])])],
  [0.5, (builder, a) => builder.call('sqrt', [a])],
  [-1, (builder, a) => builder.call('divide', [builder.constant(1), a])],
  [-2, (builder, a) => builder.call('divide', [builder.constant(1), builder.call('square', [a])])],
];

function isConstant(builder: TapeBuilder, slot: number, value: number): boolean {
  const node = builder.node(slot);
  return node.kind === 'constant' && node.value === value && node.within.lo === value && node.within.hi === value;
}

/** What `slot` is the negative of. */
function negated(builder: TapeBuilder, slot: number): number | undefined {
  const node = builder.node(slot);
  return node.kind === 'call' && node.operation === 'negate' ? node.args[0] : undefined;
}
