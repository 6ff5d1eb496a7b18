import { escapeXml } from './escape.ts';

/** A stretch of text that stands on the line, or raised above it. */
export interface Stretch {
  readonly text: string;
  readonly raised: boolean;
}

const digitsAbove = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/**
 * Cuts `text` where signs are raised, and gives those as ordinary ones to be set above the line: our faces hold only ¹, ²
 * and ³ of their own. `stretches('1.77×10⁻⁴')` → `1.77×10` on the line, `−4` above it
 */
export function stretches(text: string): Stretch[] {
  return text
    .split(/([⁺⁻]?[⁰¹²³⁴-⁹]+)/)
    .map((part, i) => ({ text: i % 2 ? lowered(part) : part, raised: i % 2 === 1 }))
    .filter((part) => part.text !== '');
}

const lowered = (raised: string): string =>
  [...raised].map((sign) => (sign === '⁻' ? '−' : sign === '⁺' ? '+' : String(digitsAbove.indexOf(sign)))).join('');

/** Content of an SVG text element: raised signs are moved up by a share of the size of the letters, what follows comes down. */
export function svgText(text: string): string {
  return stretches(text)
    .map(({ text: part, raised }, i) => {
      if (raised) return `<tspan dy="-0.4em" font-size="70%">${escapeXml(part)}</tspan>`;
      // Down by as much as the smaller letters went up.
      return i === 0 ? escapeXml(part) : `<tspan dy="0.28em">${escapeXml(part)}</tspan>`;
    })
    .join('');
}
