import fc from 'fast-check';
import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { parseExpression, parseStatement } from '../../src/expression/parse.ts';
import { point } from '../../src/expression/ranges.ts';
import { enclose } from '../../src/expression/readings/enclose.ts';
import { evaluate, evaluateTree } from '../../src/expression/readings/value.ts';
import { show } from '../../src/expression/show.ts';
import type { Tree } from '../../src/expression/tree.ts';
import { TextError, type TextProblem } from '../../src/quantity/text-problem.ts';
import { boxes, expressions, names } from './arbitrary.ts';
import { expectHeld } from './holds.ts';
import { tapeOf } from './tapes.ts';

const value = (text: string, scope: Record<string, number> = {}): number =>
  evaluateTree(parseExpression(text), (name) => scope[name]!);

function problemOf(text: string, read: (text: string) => unknown = parseExpression): TextProblem {
  try {
    read(text);
  } catch (error) {
    if (error instanceof TextError) return error.problem;
    throw error;
  }
  return expect.fail(`${text} was read`);
}

describe('what is read', () => {
  test.each<[string, number]>([
    ['1 + 2 * 3', 7],
    ['2 * 3 ^ 2', 18],
    ['-2 ^ 2', -4],
    ['2 ^ -1', 0.5],
    ['2 ^ 3 ^ 2', 512],
    ['8 / 4 / 2', 1],
    ['8 - 4 - 2', 2],
    ['--3', 3],
    ['+3 - +2', 1],
    ['3 · 2 × 2 ÷ 4 − 1', 2],
    ['3² + 2³', 17],
    ['2⁻¹', 0.5],
    ['(1 + 2)²', 9],
    ['.5 + 1e-1 + 2E2', 200.6],
    ['pi', Math.PI],
    ['3 < 4', 1],
    ['3 ≥ 4', 0],
    ['and(1 < 2, not(2 < 1), or(1 > 2, 2 <= 2))', 1],
    ['if(2 > 1, 10, 20)', 10],
    ['sum(1, 2, 3, 4)', 10],
    ['min(3, 1, 2) + max(3, 1, 2)', 4],
    ['parallel(6, 3)', 2],
    ['parallel(3, 3, 3)', 1],
    ['hypot(2, 3, 6)', 7],
    ['interp(1.5, 1, 10, 2, 20)', 15],
    ['interp(0, 1, 10, 2, 20)', 10],
    ['interp(3, 1, 10, 2, 20)', 20],
  ])('%s', (text, result) => {
    expect(value(text)).toBeCloseTo(result, 12);
  });

  test.each<[string, number]>([
    ['10 mV', 0.01],
    ['10mV', 0.01],
    ['4.7 uF', 4.7e-6],
    ['25 degC', 298.15],
    ['25 °C', 298.15],
    ['50 %', 0.5],
    ['2 mm^2', 2e-6],
    ['2 mm²', 2e-6],
    ['5 s^-1', 5],
    ['10 [V/us]', 1e7],
    ['2 [K/W]', 2],
    ['1 / 2 us', 500000],
    ['(10 mV)^2', 1e-4],
    ['1 kohm * 1 mA', 1],
    ['12 V / s', 3],
    ['12 V/R', 3],
    ['2 min', 120],
    ['2 * min(3, 4)', 6],
  ])('a number with a unit: %s', (text, result) => {
    expect(value(text, { s: 4, R: 4 })).toBe(result);
  });

  test('a bare symbol is a variable, whatever it is called', () => {
    expect(value('V + mV * s + e + E_on + π1', { V: 1, mV: 2, s: 3, e: 4, E_on: 5, π1: 6 })).toBe(22);
    expect(value('pack.V_bat * θ_ja', { 'pack.V_bat': 2, θ_ja: 3 })).toBe(6);
    expect(value('min + if', { min: 1, if: 2 })).toBe(3);
  });

  test('every node knows where it was typed', () => {
    const text = 'V_in * (R_bot + 10 ohm) / sqrt(x)';
    const seen: string[] = [];
    const walk = (tree: Tree): void => {
      seen.push(text.slice(tree.at.start, tree.at.end));
      if (tree.kind === 'call') tree.args.forEach(walk);
    };
    walk(parseExpression(text));
    expect(seen).toEqual([
      text,
      'V_in * (R_bot + 10 ohm)',
      'V_in',
      '(R_bot + 10 ohm)',
      'R_bot',
      '10 ohm',
      'sqrt(x)',
      'x',
    ]);
  });

  test('a statement has two sides', () => {
    const { left, relation, right } = parseStatement('P_top + P_x <= 0.5 * P_r');
    expect([show(left), relation, show(right)]).toEqual(['P_top + P_x', '<=', '0.5 * P_r']);
    expect(parseStatement('a ≥ b').relation).toBe('>=');
    expect(problemOf('a + b', parseStatement)).toEqual({
      code: 'not-a-comparison',
      start: 0,
      end: 5,
      found: '`a + b`, which compares nothing',
      expected: 'a comparison such as V_out <= 3.3 V',
    });
  });

  test('what is shown reads back as the same tree', () => {
    const bare = (tree: Tree): unknown =>
      tree.kind === 'call' ? [tree.operation, ...tree.args.map(bare)] : tree.kind === 'number' ? tree.value : tree.name;
    fc.assert(
      fc.property(expressions, (tree) => {
        expect(bare(parseExpression(show(tree)))).toEqual(bare(tree));
      }),
      { numRuns: 2000 },
    );
  });
});

describe('what is refused, and where', () => {
  test.each<[text: string, at: string, code: string, words: string]>([
    [
      '2 R_top',
      'R_top',
      'missing-operator',
      '`R_top` behind the number 2; expected an operator such as *. To multiply, write `2 * R_top`.',
    ],
    [
      '10 foo',
      'foo',
      'unknown-unit',
      '`foo` behind the number 10; expected a unit such as mV, or an operator. To multiply, write `10 * foo`.',
    ],
    ['10 [V/foo]', 'V/foo', 'unknown-unit', '`V/foo`; expected a unit, such as [V/us].'],
    ['10 []', '', 'unknown-unit', '``; expected a unit, such as [V/us].'],
    [
      '10 V/us',
      'V/us',
      'ambiguous-unit',
      '`V/us` behind a number, where `us` may be a unit or a symbol; expected `10 [V/us]` for the unit, or spaces for the symbol: `10 V / us`.',
    ],
    [
      '5 A·s',
      'A·s',
      'ambiguous-unit',
      '`A·s` behind a number, where `s` may be a unit or a symbol; expected `5 [A·s]` for the unit, or spaces for the symbol: `5 A · s`.',
    ],
    [
      '10 mV^x',
      'mV^',
      'ambiguous-power',
      'a power behind the unit `mV`; expected a whole number that belongs to the unit, as in 10 mm^2, or brackets: `(10 mV)^…`.',
    ],
    [
      '(a)(b)',
      '(',
      'missing-operator',
      '`(` behind a complete expression; expected an operator such as *. To multiply, write `*` before it.',
    ],
    [
      'a b',
      'b',
      'missing-operator',
      '`b` behind a complete expression; expected an operator such as *. To multiply, write `*` before it.',
    ],
    [
      '2 sqrt(x)',
      'sqrt',
      'missing-operator',
      '`sqrt` behind the number 2; expected an operator such as *. To multiply, write `2 * sqrt(…)`.',
    ],
    [
      '2 min(x, y)',
      'min',
      'missing-operator',
      '`min` behind the number 2; expected an operator such as *. To multiply, write `2 * min(…)`.',
    ],
    [
      '2 V (x)',
      '(',
      'missing-operator',
      '`(` behind a complete expression; expected an operator such as *. To multiply, write `*` before it.',
    ],
    [
      '2 (x)',
      '(',
      'missing-operator',
      '`(` behind the number 2; expected an operator such as *. To multiply, write `2 * (…)`.',
    ],
    [
      '1 2',
      '2',
      'missing-operator',
      '`2` behind the number 1; expected an operator such as *. One number follows another.',
    ],
    [
      'a < 2 and b < 3',
      'and',
      'missing-operator',
      '`and` behind the number 2; expected an operator such as *. Write `and(p, q)`.',
    ],
    [
      'sqr(x)',
      'sqr',
      'unknown-function',
      '`sqr` before a bracket; expected a function such as sqrt. Did you mean sqrt? To multiply, write `sqr * (…)`.',
    ],
    ['sqrt(1, 2)', 'sqrt(1, 2)', 'wrong-arguments', '2 arguments; expected `sqrt(a)`.'],
    ['min(a)', 'min(a)', 'wrong-arguments', '1 argument; expected `min(a, b, …)`.'],
    ['a +', '', 'nothing-here', 'the end of the expression; expected a number, a symbol or a bracket.'],
    ['', '', 'nothing-here', 'nothing; expected a number, a symbol or a bracket.'],
    ['a + * b', '*', 'unexpected-sign', '`*`; expected a number, a symbol or a bracket.'],
    ['(a + b', '(', 'unmatched-bracket', 'an opening bracket; expected a closing one after it.'],
    ['a + b)', ')', 'unmatched-bracket', 'a closing bracket; expected an opening one before it.'],
    [
      '1,5 * a',
      ',',
      'unexpected-sign',
      'a comma; expected an operator; commas part the arguments of a function. Decimals are written with a point.',
    ],
    [
      'a = b',
      '=',
      'unexpected-sign',
      '`=`; expected a number, a symbol or one of + - * / ^ ( ) , < > <= >=. Compare with <=, >=, < or >.',
    ],
    [
      'a || b',
      '||',
      'unexpected-sign',
      '`||`; expected a number, a symbol or one of + - * / ^ ( ) , < > <= >=. Write `or(p, q)`, or `parallel(a, b)` for impedances.',
    ],
    [
      'a ** b',
      '**',
      'unexpected-sign',
      '`**`; expected a number, a symbol or one of + - * / ^ ( ) , < > <= >=. A power is written `a ^ b`.',
    ],
    [
      'a % b',
      '%',
      'unexpected-sign',
      '`%`; expected a number, a symbol or one of + - * / ^ ( ) , < > <= >=. A percentage is a number followed by %, such as 10 %.',
    ],
    [
      'a < b < c',
      '<',
      'chained-comparison',
      'a second comparison; expected one. Write two checks, or `and(a <= b, b <= c)`.',
    ],
    ['1e400', '1e400', 'number-too-large', '1e400; expected a number below 1.8e308.'],
    ['a 🙂', '🙂', 'unexpected-sign', '`🙂`; expected a number, a symbol or one of + - * / ^ ( ) , < > <= >=.'],
  ])('%s', (text, at, code, words) => {
    const problem = problemOf(text);
    expect(text.slice(problem.start, problem.end)).toBe(at);
    expect(problem.code).toBe(code);
    expect(`${problem.found}; expected ${problem.expected}.${problem.hint ? ` ${problem.hint}` : ''}`).toBe(words);
  });

  test.each<[string, string, string]>([
    ['brackets', '('.repeat(100_000), 'too-long'],
    ['nested brackets', `${'('.repeat(4000)}a${')'.repeat(4000)}`, 'too-deep'],
    ['signs', `${'-'.repeat(9000)}1`, 'too-deep'],
    ['powers', `a${'^a'.repeat(4000)}`, 'too-deep'],
    ['nested calls', `${'abs('.repeat(1500)}a${')'.repeat(1500)}`, 'too-deep'],
    ['a long sum', `a${'+a'.repeat(4000)}`, 'too-deep'],
    ['superscripts', `a${'²'.repeat(9000)}`, 'number-too-large'],
    ['many superscripts', `a${'² '.repeat(3000)}`, 'too-deep'],
    ['one long name', 'a'.repeat(10_001), 'too-long'],
    ['a huge exponent', '1e-999999999 degC', 'none'],
    ['names of the language', '__proto__(1)', 'unknown-function'],
    ['a constructor', 'constructor(1)', 'unknown-function'],
  ])('hostile: %s', (_, text, code) => {
    const started = performance.now();
    if (code === 'none') expect(value(text)).toBe(273.15);
    else expect(problemOf(text).code).toBe(code);
    expect(performance.now() - started).toBeLessThan(500);
  });

  test('whatever is typed is read or refused with a place inside the text', () => {
    const bits = fc.constantFrom(
      'a',
      'R_1',
      '2',
      '1e3',
      ' ',
      ' ',
      '+',
      '-',
      '*',
      '/',
      '^',
      '(',
      ')',
      ',',
      '<=',
      'mV',
      '[V/us]',
      'sqrt',
      'if',
      '²',
      '%',
      '.',
      'é',
      '\n',
      '"',
      '=',
    );
    fc.assert(
      fc.property(fc.array(bits, { maxLength: 20 }), (parts) => {
        const text = parts.join('');
        try {
          parseExpression(text);
        } catch (error) {
          if (!(error instanceof TextError)) throw error;
          const { start, end } = error.problem;
          expect(0 <= start && start <= end && end <= text.length).toBe(true);
        }
      }),
      { numRuns: 5000 },
    );
  });
});

describe('an outside reader of expressions', () => {
  const math = create(all!, { relTol: 1e-15, absTol: 1e-300 });
  const functions = {
    ...{
      ln: Math.log,
      log10: Math.log10,
      log2: Math.log2,
      exp: Math.exp,
      sqrt: Math.sqrt,
      square: (x: number) => x * x,
    },
    // Theirs call nearly whole numbers whole, and round a half away from zero.
    ...{ floor: Math.floor, ceil: Math.ceil, round: Math.round },
    share: (a: number, b: number) => a / (a + b),
    parallel: (...args: number[]) => args.reduce((a, b) => (a * b) / (a + b)),
    choose: (p: boolean, a: number, b: number) => (p ? a : b),
    interp: (x: number, ...points: number[]) => {
      const at = [...points.keys()].filter((i) => i % 2 === 0);
      const next = at.find((i) => x <= points[i]!);
      if (next === undefined) return points.at(-1);
      if (next === 0) return points[1];
      const part = (x - points[next - 2]!) / (points[next]! - points[next - 2]!);
      return points[next - 1]! + (points[next + 1]! - points[next - 1]!) * part;
    },
  };

  test('mathjs calculates the same numbers', () => {
    let compared = 0;
    fc.assert(
      fc.property(expressions, boxes(1), (tree, { points: [at] }) => {
        const text = show(tree);
        // `and`, `or` and `not` are signs there, and if(…) is none of its functions.
        if (/\b(and|or|not)\(/.test(text)) return;
        const { tape, output } = tapeOf(parseExpression(text), { simplify: false });
        const range = enclose(tape, at!.map(point))[output]!;
        const finite = evaluate(tape, at!).every(Number.isFinite);
        // Where there is no value, theirs is complex; where theirs is infinite, so is ours.
        if (!range.certain || !finite) return;
        const scope = Object.fromEntries(names.map((name, i) => [name, at![i]!]));
        const theirs: number = math.evaluate(text.replace(/\bif\(/g, 'choose('), { ...scope, ...functions });
        compared++;
        // A jump may fall either way by the last bit; the enclosure holds both.
        const rounding = 1e-9 * Math.max(1, Math.abs(theirs));
        expectHeld({ lo: range.lo - rounding, hi: range.hi + rounding, certain: true }, theirs);
      }),
      { numRuns: 3000 },
    );
    expect(compared).toBeGreaterThan(1000);
  });
});
