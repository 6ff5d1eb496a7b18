import fc from 'fast-check';
import katex from 'katex';
import { describe, expect, test } from 'vitest';
import { parseExpression } from '../../../src/expression/parse.ts';
import { figureTex, typeset, typesetTerms } from '../../../src/expression/readings/typeset.ts';
import { texSymbol } from '../../../src/expression/tex-symbol.ts';
import { texUnit } from '../../../src/expression/tex-unit.ts';
import { parseUnit, unitNames } from '../../../src/quantity/units.ts';
import { expressions } from '../arbitrary.ts';

/** As the pages do it: everything KaTeX does not know is an error, save µ, for which the text face stands in. */
const strict = (_: string, message: string): 'ignore' | 'error' => (/["']µ["']/.test(message) ? 'ignore' : 'error');
const render = (tex: string): string =>
  katex.renderToString(tex, { strict, trust: () => expect.fail(tex), maxExpand: 1000 });
const symbols = (text: string): string => typeset(parseExpression(text));

describe('symbols', () => {
  test.each([
    [
      'V_in * R_bot / (R_top + R_bot)',
      String.raw`\frac{V_{\mathrm{in}} \, R_{\mathrm{bot}}}{R_{\mathrm{top}} + R_{\mathrm{bot}}}`,
    ],
    ['1 / (2 * pi * parallel(R_1, R_2) * C)', String.raw`\frac{1}{2 \, \pi \, (R_{1} \parallel R_{2}) \, C}`],
    ['(V_in - V_out)^2 / R', String.raw`\frac{(V_{\mathrm{in}} - V_{\mathrm{out}})^{2}}{R}`],
    ['-(a + b)', '-(a + b)'],
    ['-a * b / c', String.raw`-\frac{a \, b}{c}`],
    ['(-a)^2', '(-a)^{2}'],
    ['-a^2', '-a^{2}'],
    ['a - (b - c)', 'a - (b - c)'],
    ['a * -b', String.raw`a \, (-b)`],
    ['(a / b)^2', String.raw`\left(\frac{a}{b}\right)^{2}`],
    ['a^b^c', 'a^{b^{c}}'],
    ['(a^b)^c', String.raw`\left(a^{b}\right)^{c}`],
    ['V * (1 + a / b) * c', String.raw`V \left(1 + \frac{a}{b}\right) c`],
    ['x * 2 * 3', String.raw`x \cdot 2 \cdot 3`],
    ['2 * (a / b)', String.raw`2 \cdot \frac{a}{b}`],
    ['10 mV * R', String.raw`10\,\mathrm{mV} \cdot R`],
    ['(10 mV)^2', String.raw`(10\,\mathrm{mV})^{2}`],
    ['1.5e-3 * a', String.raw`1.5 \times 10^{-3} \cdot a`],
    ['hypot(a, b)', String.raw`\sqrt{a^{2} + b^{2}}`],
    ['exp(-t / tau)', String.raw`\exp\!\left(-\frac{t}{\tau}\right)`],
    ['exp(-x)', String.raw`\mathrm{e}^{-x}`],
    ['sqrt(a) + abs(b)', String.raw`\sqrt{a} + \left|b\right|`],
    ['max(a, b) * sin(x)^2', String.raw`\max(a,\; b) \, (\sin(x))^{2}`],
    ['interp(T, 0, 1, 2, 3)', String.raw`\operatorname{curve}(T)`],
    ['a + parallel(b, c)', String.raw`a + (b \parallel c)`],
    ['parallel(b, c) + a', String.raw`(b \parallel c) + a`],
    ['if(a < b, a, b)', String.raw`\begin{cases} a & \text{if } a < b \\ b & \text{otherwise} \end{cases}`],
    ['R * 50 %', String.raw`R \cdot 50\,\%`],
  ])('%s', (text, tex) => {
    expect(symbols(text)).toBe(tex);
    render(tex);
  });

  test.each([
    ['V', 'V'],
    ['R1', 'R_{1}'],
    ['R_DS_on', String.raw`R_{\mathrm{DS,on}}`],
    ['theta_ja', String.raw`\theta_{\mathrm{ja}}`],
    ['eta', String.raw`\eta`],
    ['Delta_I', String.raw`\Delta I`],
    ['Delta_I_L', String.raw`\Delta I_{L}`],
    ['pack.V_bat', String.raw`V_{\mathrm{bat}}`],
    ['I_q_0', 'I_{q,0}'],
    ['k_theta', String.raw`k_{\theta}`],
    ['constructor', String.raw`\mathrm{constructor}`],
    ['V_toString', String.raw`V_{\mathrm{toString}}`],
    ['duty', String.raw`\mathrm{duty}`],
    ['µ_r', String.raw`\mu_{r}`],
    ['_x', String.raw`\__{x}`],
  ])('the symbol %s', (name, tex) => {
    expect(texSymbol(name)).toBe(tex);
    render(tex);
  });
});

describe('numbers put in', () => {
  const figures: Record<string, string> = { a: '-3', b: '150\\,\\mathrm{k\\Omega}', c: '2', d: '4.7 \\times 10^{-6}' };
  const numbers = (text: string): string => typeset(parseExpression(text), { symbol: (name) => figures[name]! });

  test.each([
    ['c * a', String.raw`2 \cdot (-3)`],
    ['a^2', '(-3)^{2}'],
    ['b^2', String.raw`(150\,\mathrm{k\Omega})^{2}`],
    [
      'c * b / (b + b)',
      String.raw`\frac{2 \cdot 150\,\mathrm{k\Omega}}{150\,\mathrm{k\Omega} + 150\,\mathrm{k\Omega}}`,
    ],
    ['c - a', '2 - (-3)'],
    ['a + c', '-3 + 2'],
    ['a * c', String.raw`-3 \cdot 2`],
    ['c * a * a / c', String.raw`\frac{2 \cdot (-3) \cdot (-3)}{2}`],
    ['a / c', String.raw`-\frac{3}{2}`],
    ['d^c', String.raw`\left(4.7 \times 10^{-6}\right)^{2}`],
    ['c^c * pi', String.raw`2^{2} \, \pi`],
    ['b * sqrt(c)', String.raw`150\,\mathrm{k\Omega} \cdot \sqrt{2}`],
  ])('%s', (text, tex) => {
    expect(numbers(text)).toBe(tex);
    render(tex);
  });

  test('how tightly a figure binds', () => {
    expect(figureTex('12').binds).toBe('atom');
    expect(figureTex('-12').binds).toBe('sum');
    expect(figureTex('12\\,\\mathrm{V}').binds).toBe('product');
    expect(figureTex('30{}^{\\circ}').binds).toBe('product');
    expect(figureTex('\\infty').binds).toBe('atom');
  });
});

describe('units', () => {
  test.each([
    ['kΩ', String.raw`\mathrm{k\Omega}`],
    ['K/W', String.raw`\mathrm{K}/\mathrm{W}`],
    ['mm²', String.raw`\mathrm{mm}^{2}`],
    ['A²·s', String.raw`\mathrm{A}^{2}{\cdot}\mathrm{s}`],
    ['°C', String.raw`{}^{\circ}\mathrm{C}`],
    ['W/(m·K)', String.raw`\mathrm{W}/(\mathrm{m}{\cdot}\mathrm{K})`],
    ['nV/√Hz', String.raw`\mathrm{nV}/\sqrt{\mathrm{Hz}}`],
    ['%', String.raw`\%`],
    ['1/K', String.raw`1/\mathrm{K}`],
    ['', ''],
  ])('%s', (unit, tex) => {
    expect(texUnit(unit)).toBe(tex);
  });

  test('KaTeX sets every unit, and none of its letters is lost', () => {
    for (const name of unitNames()) {
      const unit = parseUnit(name).text;
      const shown = render(texUnit(unit))
        .replace(/<annotation.*?<\/annotation>/s, '')
        .replace(/<[^>]*>/g, '');
      for (const letter of unit.replace(/[·/()%°√²]/g, '')) expect(shown, unit).toContain(letter);
    }
  });
});

describe('long equations', () => {
  test('break between the terms of a sum, or at the dots of a product', () => {
    expect(typesetTerms(parseExpression('a + b - (c + d) * 2'))).toEqual(['a', '+ b', String.raw`- (c + d) \cdot 2`]);
    expect(typesetTerms(parseExpression('sum(a, -b, c)'))).toEqual(['a', '+ (-b)', '+ c']);
    expect(typesetTerms(parseExpression('2 * 3 * abs(4 * 5)'))).toEqual([
      '2',
      String.raw`\cdot 3 \left|4 \cdot 5\right|`,
    ]);
    expect(typesetTerms(parseExpression('a * b'))).toEqual([String.raw`a \, b`]);
  });

  /** Brackets that open in one piece and close in another cannot grow. */
  const rigid = (tex: string) =>
    tex
      .replaceAll(/\\!?\\left(?=\()|\\right(?=\))/g, '')
      .replaceAll('\\!', '')
      .replaceAll(/,\\;\s*/g, ', ');

  test('the pieces are the whole', () => {
    fc.assert(
      fc.property(expressions, (tree) => {
        expect(rigid(typesetTerms(tree).join(' '))).toBe(rigid(typeset(tree)));
      }),
    );
  });
});

test('KaTeX sets every expression, as symbols and with numbers', () => {
  fc.assert(
    fc.property(expressions, (tree) => {
      render(typeset(tree));
      for (const figure of ['-3', '150\\,\\mathrm{k\\Omega}', '30{}^{\\circ}'])
        render(typeset(tree, { symbol: () => figure }));
    }),
    { numRuns: 500 },
  );
});
