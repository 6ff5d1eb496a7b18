import { describe, expect, test } from 'vitest';
import { breakable, equationLayout } from '../../src/components/equation-layout.ts';
import { formulaWidth } from '../../src/components/formula-width.ts';
import { maths } from '../../src/components/maths.ts';
import type { Equation } from '../../src/packet/block.ts';

describe('formulas', () => {
  test('come as HTML and as MathML', () => {
    const html = maths('V_{\\mathrm{out}} = 2.25\\,\\mathrm{V}');
    expect(html).toContain('<math');
    expect(html).toContain('katex-html');
  });

  test.each([
    ['what KaTeX does not know', '\\nosuch'],
    ['open braces', 'V_{out'],
    ['what only loose reading allows', 'x % no line ends this'],
    ['letters KaTeX has no face for', 'x = Ж'],
    ['links', '\\href{https://example.com}{x}'],
    ['raw markup', '\\htmlClass{x}{y}'],
    ['pictures', '\\includegraphics{x.png}'],
  ])('are refused with %s', (_, tex) => {
    expect(() => maths(tex)).toThrow(`The formula ${tex} cannot be set`);
  });

  test('stop at macros that grow without end', () => {
    expect(() => maths('\\def\\a{\\a\\a}\\a')).toThrow('cannot be set');
  });

  test('hold no markup of their own', () => {
    expect(maths('\\text{<b>} < 1')).not.toContain('<b>');
  });
});

describe('widths', () => {
  // Measured in Chromium 153 with KaTeX's own faces at 100 px.
  test.each([
    ['x = 1', 2.405],
    ['T_{j,\\mathrm{lim}}', 2.11],
    [
      '\\min\\!\\left(k_{\\mathrm{junction,limit}},\\; T_{j,\\mathrm{max}} - k_{\\mathrm{junction,below,max}}\\right)',
      18.04,
    ],
    ['\\frac{A_{\\mathrm{shared}}}{A_{\\mathrm{shared}} + A_{\\mathrm{own}}}', 4.26],
    ['\\sqrt{0.25 - \\left(\\frac{x}{y} - 0.5\\right)^{2}}', 8.75],
  ])('%s is %f em wide, to one per cent', (tex, em) => {
    expect(Math.abs(formulaWidth(tex).whole / em - 1)).toBeLessThan(0.01);
  });

  test('a formula breaks at its signs, not inside growing brackets', () => {
    const { whole, piece } = formulaWidth('aaaa + bbbb + cccc');
    expect(piece).toBeLessThan(whole / 2);
    const held = formulaWidth('\\left(aaaa + bbbb + cccc\\right)');
    expect(held.piece).toBe(held.whole);
  });
});

describe('the layout of an equation', () => {
  const equation = (...terms: string[]): Equation => ({
    kind: 'equation',
    id: 'a.b',
    number: '7.1',
    intro: [],
    left: 'x',
    lines: [{ label: 'symbols', terms }],
    notes: [],
  });

  test('keeps the space of a sign that begins a term', () => {
    expect(equationLayout(equation('a', '+ b', '\\cdot c', 'd')).lines).toEqual([['a', '{}+ b', '{}\\cdot c', 'd']]);
  });

  test('loosens brackets of a term that is wider than the column, and of no other', () => {
    const wide = `\\left(${Array.from({ length: 12 }, (_, index) => `P_{\\mathrm{loss,${index}}}`).join(' + ')}\\right)`;
    const layout = equationLayout(equation('\\left(a\\right)', wide));
    expect(layout.lines[0]![0]).toBe('\\left(a\\right)');
    expect(layout.lines[0]![1]).toContain('\\bigl(');
    expect(layout.wide).toBe(false);
  });

  test('takes the whole width for what cannot be broken', () => {
    expect(equationLayout(equation(`\\frac{${'abcdefgh'.repeat(12)}}{b}`)).wide).toBe(true);
  });

  test('what is loosened can still be set', () => {
    const tex = '\\min\\!\\left(a,\\; \\frac{b}{2}\\right)';
    expect(breakable(tex)).toBe('\\min\\bigl(a,\\; \\allowbreak \\frac{b}{2}\\bigr)');
    expect(formulaWidth(breakable(tex)).piece).toBeLessThan(formulaWidth(tex).piece);
  });
});
