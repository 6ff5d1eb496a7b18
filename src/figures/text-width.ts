import { createRequire } from 'node:module';
import { type Font, openSync } from 'fontkit';

const require = createRequire(import.meta.url);
const fonts = new Map<string, Font[]>();
const advances = new Map<string, number>();

type Weight = 400 | 600;
type Slope = 'normal' | 'italic';

/**
 * Width of `text` in pixels at `size` pixels, from the advances of the serif face that the page shows.
 * `textWidth('0', 10)` → 4.95
 */
export function textWidth(text: string, size: number, weight: Weight = 400, slope: Slope = 'normal'): number {
  let sum = 0;
  for (const character of text) sum += advance(character, weight, slope);
  return sum * size;
}

function advance(character: string, weight: Weight, slope: Slope): number {
  const key = `${weight}${slope}${character}`;
  const known = advances.get(key);
  if (known !== undefined) return known;
  const code = character.codePointAt(0)!;
  const font = fontsOf(weight, slope).find((candidate) => candidate.hasGlyphForCodePoint(code));
  // A sign of neither subset comes from the maths font; half an em is near its comparison signs and arrows.
  const width = font ? font.glyphForCodePoint(code).advanceWidth / font.unitsPerEm : 0.5;
  advances.set(key, width);
  return width;
}

function fontsOf(weight: Weight, slope: Slope): Font[] {
  const face = `${weight}-${slope}`;
  const open = fonts.get(face);
  if (open) return open;
  const opened = ['latin', 'greek'].map((subset) =>
    openSync(require.resolve(`@fontsource/stix-two-text/files/stix-two-text-${subset}-${face}.woff2`)),
  );
  fonts.set(face, opened);
  return opened;
}
