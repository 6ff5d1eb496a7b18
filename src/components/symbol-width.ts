/**
 * Room for the left side of an equation in em, a little more than it needs, so that the equals signs of its lines stand under
 * each other. Subscripts are set at 0.7 of the size; commands and braces take no room.
 * `symbolWidth('V_{\\mathrm{out}}')` → 2.2
 */
export function symbolWidth(tex: string): number {
  let width = 0;
  for (const part of tex.match(/[_^](?:\{(?:[^{}]|\{[^{}]*\})*\}|\\?\w)|[^_^]+/g) ?? []) {
    const script = part.startsWith('_') || part.startsWith('^');
    const letters = part
      .replaceAll(/\\(?:mathrm|mathit|text|operatorname)\b|[_^{}\s]/g, '')
      .replaceAll(/\\[a-zA-Z]+/g, 'x');
    width += letters.length * (script ? 0.38 : 0.68);
  }
  return Math.round((width + 0.4) * 100) / 100;
}
