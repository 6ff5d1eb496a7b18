import { describe, expect, test } from 'vitest';
import { parseExpression } from '../../src/expression/parse.ts';
import { pruned } from '../../src/expression/prune.ts';
import { range } from '../../src/expression/ranges.ts';
import { enclose } from '../../src/expression/readings/enclose.ts';
import { kernelOf } from '../../src/expression/readings/kernel.ts';
import { gradient } from '../../src/expression/readings/slope.ts';
import { evaluate } from '../../src/expression/readings/value.ts';
import { specialise } from '../../src/expression/specialise.ts';
import { TapeBuilder } from '../../src/expression/tape-builder.ts';

const names = ['a', 'b', 'c', 'd'];

/** A builder with equations that may use those before them, as the results of a board do. */
function built(equations: Record<string, string>) {
  const builder = new TapeBuilder();
  const slots = new Map(names.map((name) => [name, builder.input(name)]));
  for (const [name, text] of Object.entries(equations)) {
    slots.set(
      name,
      builder.tree(parseExpression(text), (symbol) => slots.get(symbol)!, name),
    );
  }
  return { builder, slots };
}

/** What a text comes to on a tape, written out. */
function steps(text: string): string {
  const { builder, slots } = built({ out: text });
  const write = (slot: number): string => {
    const node = builder.node(slot);
    if (node.kind === 'input') return node.name;
    return node.kind === 'constant' ? String(node.value) : `${node.operation}(${node.args.map(write).join(' ')})`;
  };
  return write(slots.get('out')!);
}

describe('what is the same is computed once', () => {
  test.each([
    ['a - a', '0'],
    ['a / a', '1'],
    ['(a * b) / (b * a)', '1'],
    ['a + b - a', 'b'],
    ['(a + b) - (a - c)', 'add(b c)'],
    ['a * b / (c * b)', 'divide(a c)'],
    ['a * b / b^2', 'divide(a b)'],
    ['a * a', 'square(a)'],
    ['a^2 * a', 'power(a 3)'],
    ['a * (b * a)', 'multiply(b square(a))'],
    ['--a', 'a'],
    ['a - -b', 'add(a b)'],
    ['-a + b', 'subtract(b a)'],
    ['-a / a', '-1'],
    ['a + a', 'multiply(a 2)'],
    ['3 * a - a', 'multiply(a 2)'],
    ['2 * (a + b) - 2 * b', 'multiply(a 2)'],
    ['a * b - a * c', 'multiply(a subtract(b c))'],
    ['a / c + b / c', 'divide(add(a b) c)'],
    ['a * (1 + b) - a', 'multiply(a b)'],
    ['a / (a + b)', 'share(a b)'],
    ['a / (b + a + c)', 'share(a add(b c))'],
    ['c * b / (a + b)', 'multiply(c share(b a))'],
    ['a * b / (a + b)', 'parallel(a b)'],
    ['d * (a + b) / b', 'multiply(d add(divide(a b) 1))'],
    ['a ^ 0.5', 'sqrt(a)'],
    ['a ^ -1', 'divide(1 a)'],
    ['a ^ 1 + 0', 'a'],
    ['if(1 < 2, a, b)', 'a'],
    ['if(a < b, c, c)', 'c'],
    ['min(a, a)', 'a'],
    ['sum(a, b, c)', 'add(add(a b) c)'],
    ['2 * 3 + a', 'add(a 6)'],
    ['a + b * c', 'add(a multiply(b c))'],
  ])('%s is %s', (text, plain) => {
    const sorted = (written: string): string => [...written].sort().join('');
    // The order of a sum or product is the builder's own affair.
    expect(sorted(steps(text)), steps(text)).toBe(sorted(plain));
  });

  test('over several equations', () => {
    const { slots } = built({ V: 'a * b', P: 'V^2 / c', ratio: '(V / c) / (b * a / c)', none: 'P - V * V / c' });
    const constant = built({ one: '1', zero: '0' });
    expect(slots.get('ratio')).toBeGreaterThan(0);
    expect(steps('(a * b / c) / (b * a / c)')).toBe('1');
    expect(constant.builder.node(constant.slots.get('one')!)).toMatchObject({ kind: 'constant', value: 1 });
    const { builder } = built({ V: 'a * b', P: 'V^2 / c', none: 'P - V * V / c' });
    expect(builder.finish().tape.steps.at(-1)).toEqual({ constant: 0 });
  });

  test('a divider and two resistors side by side are exact over their box', () => {
    const box = [range(9, 11), range(90, 110), range(1, 1), range(1, 1)];
    const over = (text: string) => {
      const { builder, slots } = built({ out: text });
      const { tape, outputs } = builder.finish([slots.get('out')!]);
      return enclose(tape, box)[outputs[0]!]!;
    };
    expect(over('a / (a + b)').lo).toBeCloseTo(9 / 119, 14);
    expect(over('a / (a + b)').hi).toBeCloseTo(11 / 101, 14);
    expect(over('a * b / (a + b)').hi).toBeCloseTo((11 * 110) / 121, 12);
  });
});

describe('divisors', () => {
  test('are kept with their place and owner, those that cancel too', () => {
    const { builder, slots } = built({ one: 'a / b', two: 'c * b / b', three: 'd ^ -2 / 3' });
    const { divisors, slotOf } = builder.finish([slots.get('two')!]);
    expect(divisors).toEqual([
      { slot: slotOf(slots.get('b')!), at: { start: 4, end: 5 }, owner: 'one' },
      { slot: slotOf(slots.get('b')!), at: { start: 8, end: 9 }, owner: 'two' },
      { slot: slotOf(slots.get('d')!), at: { start: 0, end: 1 }, owner: 'three' },
    ]);
  });

  test('a constant that is zero is one', () => {
    expect(built({ out: 'a / (2 - 2)' }).builder.finish().divisors).toHaveLength(1);
    expect(steps('0 / 0')).toBe('divide(0 0)');
    expect(built({ out: '1 / 0' }).builder.finish().tape.steps).toContainEqual({ operation: 'divide', args: [4, 5] });
  });
});

test('constants that are no double carry a range that holds them', () => {
  const { builder, slots } = built({ out: '2 * pi / 3' });
  const { tape, outputs } = builder.finish([slots.get('out')!]);
  const [step] = tape.steps.slice(-1);
  expect(step).toMatchObject({ constant: (2 * Math.PI) / 3 });
  const found = enclose(
    tape,
    names.map(() => range(0, 0)),
  )[outputs[0]!]!;
  // 2π/3 = 2.09439510239319549…; the double nearest to it is 2.0943951023931953.
  expect(found.lo).toBeLessThan(found.hi);
  expect(found.lo).toBeLessThanOrEqual(2.0943951023931953);
  expect(found.hi).toBeGreaterThanOrEqual(2.0943951023931957);
});

test('a finished tape keeps what its outputs need, and every input', () => {
  const { builder, slots } = built({ one: 'a + b', two: 'one * c', three: 'sqrt(d)' });
  const { tape, outputs } = builder.finish([slots.get('two')!]);
  expect(tape.inputs).toEqual(names);
  expect(tape.steps.map((step) => ('operation' in step ? step.operation : 'constant'))).toEqual(['add', 'multiply']);
  expect(outputs).toEqual([5]);
  expect(() => builder.finish([slots.get('two')!]).slotOf(slots.get('three')!)).toThrow('not among the outputs');
});

test('pruning leaves out inputs too, and says which stayed', () => {
  const { builder, slots } = built({ one: 'b * d', two: 'a + 1' });
  const { tape, slotOf } = builder.finish();
  const part = pruned(tape, [slotOf(slots.get('one')!)]);
  expect(part).toEqual({
    tape: { inputs: ['b', 'd'], steps: [{ operation: 'multiply', args: [0, 1] }] },
    outputs: [2],
    inputs: [1, 3],
  });
});

test('holding inputs calculates what follows from them beforehand', () => {
  const { builder, slots } = built({ drift: '1 + a * (b - 25)', R: 'c * drift', out: 'R * d' });
  const { tape, outputs } = builder.finish([slots.get('out')!]);
  const held = specialise(
    tape,
    new Map([
      [0, 0.5],
      [1, 25],
    ]),
    outputs,
  );
  expect(held.tape).toEqual({ inputs: ['c', 'd'], steps: [{ operation: 'multiply', args: [0, 1] }] });
  expect(held.inputs).toEqual([2, 3]);
});

test('names that repeat stay apart', () => {
  const held = specialise(
    { inputs: ['x', 'x', 'y'], steps: [{ operation: 'subtract', args: [0, 1] }] },
    new Map(),
    [3],
  );
  expect(held.tape.inputs).toEqual(['x', 'x']);
  expect(evaluate(held.tape, [5, 3])[held.outputs[0]!]).toBe(2);
});

describe('a long tape', () => {
  const long = (): { tape: ReturnType<TapeBuilder['finish']>['tape']; outputs: readonly number[] } => {
    const builder = new TapeBuilder();
    let slot = builder.input('x');
    const y = builder.input('y');
    const outputs: number[] = [];
    for (let k = 1; k <= 1500; k++) {
      slot = builder.call('add', [builder.call('sin', [slot]), builder.call('multiply', [y, builder.constant(k)])]);
      if (k % 100 === 0) outputs.push(slot);
    }
    return builder.finish([...outputs, builder.input('x'), builder.constant(7)]);
  };

  test('its kernel, in several loops, gives the same bits as evaluate, for any count of trials', () => {
    const { tape, outputs } = long();
    const run = kernelOf(tape, outputs);
    for (const count of [3, 10, 1]) {
      const inputs = [0.1, 0.02].map((step) => Float64Array.from({ length: count }, (_, i) => i * step));
      const results = outputs.map(() => new Float64Array(count));
      run(inputs, results, count);
      for (let i = 0; i < count; i++) {
        const values = evaluate(tape, [inputs[0]![i]!, inputs[1]![i]!]);
        expect(results.map((column) => column[i])).toEqual(outputs.map((slot) => values[slot]));
      }
    }
  });

  test('the gradient of an output has one entry for each input', () => {
    const { tape, outputs } = long();
    expect(gradient(tape, evaluate(tape, [0.3, 0.001]), outputs[0]!)).toHaveLength(2);
    expect([...gradient(tape, evaluate(tape, [0.3, 0.001]), 1)]).toEqual([0, 1]);
  });
});
