/**
 * Digits behind the decimal point of a printed number; none where the cell holds words, a range or a dash.
 * `fractionDigits('−5.30')` → 2, `fractionDigits('41–171')` → 0
 */
export function fractionDigits(number: string): number {
  const match = /^[^\d.]*\d[\d\u2009\u202f\u2007]*\.(\d+)$/.exec(number);
  return match ? match[1]!.length : 0;
}

/**
 * What a number lacks to have `digits` digits behind the point. Printed unseen behind it, it brings all points of a column under
 * each other, for all digits are equally wide. `padding('95', 2)` → `.00`, `padding('2.3', 2)` → `0`
 */
export function padding(number: string, digits: number): string {
  const own = fractionDigits(number);
  if (own >= digits) return '';
  return own === 0 ? `.${'0'.repeat(digits)}` : '0'.repeat(digits - own);
}
