/** Words of running text, and pieces inside which a line may not break. */
export interface Piece {
  readonly text: string;
  readonly whole: boolean;
}

// Groups of digits ("100 000"), numbers with their unit, dates, and the names of deviations, actions and requirements ("D-1").
const unbroken =
  /\d+(?:[\u2009\u202f\u2007]+\d{3})+|[\u2212-]?\d[\d.]*[ \u00a0](?:°C|%|ppm|[kMGmµnp]?(?:V|A|Ω|W|F|Hz|H|s|K|J|Wh|Ah))(?![\p{L}\d])|\b\d{4}-\d{2}-\d{2}\b|\b[A-Z]{1,4}-\d+/gu;

/** Where a long name may break: behind its dots and underlines. `nameParts('bus_sense.V_out')` → `['bus_', 'sense.', 'V_', 'out']` */
export function nameParts(name: string): string[] {
  return name.match(/[^._]+[._]*|[._]+/g) ?? [];
}

/**
 * Cuts `text` where line breaks matter. Digits are grouped by two thin spaces, for our faces hold no narrower one that is kept
 * together.
 * `pieces('0 of 100 000 boards; D-1 left out')` → five pieces, of which `100 000` and `D-1` are whole
 */
export function pieces(text: string): Piece[] {
  const found: Piece[] = [];
  let done = 0;
  for (const match of text.matchAll(unbroken)) {
    if (match.index > done) found.push({ text: text.slice(done, match.index), whole: false });
    found.push({ text: match[0].replaceAll(/[\u2009\u202f\u2007]+/g, '\u2009\u2009'), whole: true });
    done = match.index + match[0].length;
  }
  if (done < text.length) found.push({ text: text.slice(done), whole: false });
  return found;
}
