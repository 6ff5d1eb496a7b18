import { createRequire } from 'node:module';
import { type Font, openSync } from 'fontkit';
import { parseDocument } from 'htmlparser2';
import { maths } from './maths.ts';

/** Width of a set formula, and of the widest of the pieces between which a line may break, in em of the formula. */
export interface FormulaWidth {
  readonly whole: number;
  readonly piece: number;
}

/**
 * Measures a formula without a browser: from KaTeX's own boxes and the advances of its faces. A few hundredths of an em off
 * where boxes overlap on purpose. `formulaWidth('x = 1')` → `{ whole: 2.41, piece: 1.63 }`
 */
export function formulaWidth(tex: string): FormulaWidth {
  const known = measured.get(tex);
  if (known) return known;
  const pieces = basesOf(parseDocument(maths(tex)) as unknown as Node).map((base) => width(base, 1, 'Main-Regular'));
  const result = { whole: pieces.reduce((sum, piece) => sum + piece, 0), piece: Math.max(0, ...pieces) };
  measured.set(tex, result);
  return result;
}

const measured = new Map<string, FormulaWidth>();

/** The part of a parsed page that is looked at here. */
interface Node {
  readonly type: string;
  readonly data?: string;
  readonly attribs?: Readonly<Record<string, string>>;
  readonly children?: readonly Node[];
}

function basesOf(node: Node): Node[] {
  const classes = classesOf(node);
  if (classes.includes('katex-mathml')) return [];
  if (classes.includes('katex-base') || classes.includes('base')) return [node];
  return (node.children ?? []).flatMap(basesOf);
}

function classesOf(node: Node): string[] {
  return node.attribs?.class?.split(' ') ?? [];
}

/** KaTeX's steps of size, in em of the text's. */
const sizes = [0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.2, 1.44, 1.728, 2.074, 2.488];

function width(node: Node, size: number, face: string): number {
  if (node.type === 'text') return [...(node.data ?? '')].reduce((sum, sign) => sum + advance(face, sign) * size, 0);
  const classes = classesOf(node);
  if (classes.some((name) => /strut$|^vlist-s$/.test(name))) return 0;
  const ownSize = size * scale(classes);
  const ownFace = faceOf(classes) ?? face;
  const children = (node.children ?? []).map((child) => width(child, ownSize, ownFace));
  const stacked = classes.includes('vlist') || classes.includes('vlist-t');
  const inside = stacked ? Math.max(0, ...children) : children.reduce((sum, child) => sum + child, 0);
  const room = classes.includes('nulldelimiter') ? 0.12 : 0;
  return inside + (room + spaces(node.attribs?.style ?? '')) * ownSize;
}

function scale(classes: readonly string[]): number {
  const from = classes.find((name) => name.startsWith('reset-size'));
  const to = from && classes.find((name) => /^size\d+$/.test(name));
  return from && to ? sizes[Number(to.slice(4)) - 1]! / sizes[Number(from.slice(10)) - 1]! : 1;
}

function spaces(style: string): number {
  const found = style.matchAll(/(?:^|;)(?:margin-left|margin-right|padding-left|width):(-?[\d.]+)em/g);
  return [...found].reduce((sum, [, value]) => sum + Number(value), 0);
}

function faceOf(classes: readonly string[]): string | undefined {
  if (classes.includes('mathnormal')) return 'Math-Italic';
  if (classes.includes('mathit')) return 'Main-Italic';
  if (classes.includes('mathbf') || classes.includes('textbf')) return 'Main-Bold';
  if (classes.includes('amsrm')) return 'AMS-Regular';
  if (classes.includes('mathrm') || classes.includes('mtext')) return 'Main-Regular';
  if (classes.includes('large-op')) return 'Size2-Regular';
  if (classes.includes('delimsizing'))
    return `Size${classes.find((name) => /^size[1-4]$/.test(name))?.slice(4) ?? 1}-Regular`;
  return undefined;
}

const require = createRequire(import.meta.url);
const fonts = new Map<string, Font>();

function advance(face: string, sign: string): number {
  const code = sign.codePointAt(0)!;
  if (code === 0x200b) return 0;
  let font = fonts.get(face);
  if (!font) {
    font = openSync(require.resolve(`katex/dist/fonts/KaTeX_${face}.woff2`));
    fonts.set(face, font);
  }
  return font.hasGlyphForCodePoint(code) ? font.glyphForCodePoint(code).advanceWidth / font.unitsPerEm : 0.5;
}
