import type { Equation } from '../packet/block.ts';
import { formulaWidth } from './formula-width.ts';

/** What an equation needs to know about its own width before it is set. */
export interface EquationLayout {
  /** Width of the left side in em of the text, so that the equals signs of all lines stand under each other. */
  readonly symbol: number;
  /** TeX of each line's terms, ready to be set. */
  readonly lines: readonly (readonly string[])[];
  /** Width in em of the text of the widest piece that cannot be broken: a narrow screen makes it smaller until it fits. */
  readonly piece: number;
  /** A piece is wider than the column and cannot be broken: the lines take the margin column too. */
  readonly wide: boolean;
}

/** Widths on paper in em of the text: column 118 mm at 10 pt; label or symbol at least; space round it and the equals sign. */
const column = 33.4;
const leastSymbol = 5;
const equals = 1.7;
/** Size of formulas in an equation, in em of the text (equation.css). */
const formulaSize = 1.03;

/** Widest piece that a screen of 320 px can show at a size that can still be read, in em of the text. */
const readable = 24;

/** A term that has to scroll in its own box on the narrowest screens; it takes the focus, so that the keyboard can move it. */
export const isLong = (tex: string): boolean => formulaWidth(tex).piece * formulaSize > readable;

export function equationLayout({ left, lines }: Equation): EquationLayout {
  const symbol = formulaWidth(left).whole * formulaSize;
  const room = (column - Math.max(leastSymbol, symbol) - equals) / formulaSize;
  const set = lines.map(({ terms }) => terms.map((term, index) => fitting(index > 0 ? operand(term) : term, room)));
  return {
    symbol: Number(symbol.toFixed(2)),
    lines: set,
    piece: Number((Math.max(0, ...set.flat().map((term) => formulaWidth(term).piece)) * formulaSize).toFixed(2)),
    wide: set.flat().some((term) => formulaWidth(term).piece > room),
  };
}

/** A leading sign keeps the space of an operator between two terms. `operand('+ x')` → `{}+ x` */
function operand(tex: string): string {
  return /^\s*([+-]|\\(cdot|times|parallel|pm|div)\b)/.test(tex) ? `{}${tex}` : tex;
}

function fitting(tex: string, room: number): string {
  return formulaWidth(tex).piece > room ? breakable(tex) : tex;
}

/**
 * Brackets that grow with their content hold it together; a term wider than a line gives them up for brackets of one size, so that
 * it can break at the signs and commas inside. `breakable('\\min\\!\\left(a,\\; b\\right)')` → `\\min\\bigl(a,\\; \\allowbreak b\\bigr)`
 */
export function breakable(tex: string): string {
  return tex
    .replaceAll(/(?:\\!)?\\left(?=[([|])/g, '\\bigl')
    .replaceAll(/\\right(?=[)\]|])/g, '\\bigr')
    .replaceAll(/,\\; (?!\\allowbreak)/g, ',\\; \\allowbreak ');
}
