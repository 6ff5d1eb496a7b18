import katex from 'katex';

const drawn = new Map<string, string>();

/**
 * HTML and MathML of a formula. The TeX is made by the engine; whatever it should not hold is an error here, not a guess.
 * @throws Error with the formula, when KaTeX does not take it
 */
export function maths(tex: string): string {
  const known = drawn.get(tex);
  if (known !== undefined) return known;
  try {
    const html = katex.renderToString(tex, {
      output: 'htmlAndMathml',
      strict: onlyMicro,
      trust: refuse,
      maxExpand: 1000,
    });
    drawn.set(tex, html);
    return html;
  } catch (error) {
    throw new Error(`The formula ${tex} cannot be set: ${(error as Error).message}`, { cause: error });
  }
}

/** KaTeX has no upright µ of its own; the text face lends it (KaTeX_Main in fonts.css). Anything else unknown is an error. */
const onlyMicro = (_code: string, message: string): 'ignore' | 'error' =>
  /["']µ["']/.test(message) ? 'ignore' : 'error';

// KaTeX passes over what it does not trust; we want to hear of it.
function refuse(context: { command: string }): never {
  throw new Error(`${context.command} is not allowed`);
}
