/**
 * The known name that a mistyped one most likely meant, or undefined when none is near.
 * Near: at most a third of the letters differ (edit distance, with neighbours swapped counting once).
 * @example nearest('R_tpo', ['R_top', 'R_bot']) // 'R_top'
 */
export function nearest(typed: string, known: Iterable<string>): string | undefined {
  let best: string | undefined;
  let least = Math.max(1, Math.floor(typed.length / 3)) + 1;
  for (const name of known) {
    if (Math.abs(name.length - typed.length) >= least) continue;
    const far = name.toLowerCase() === typed.toLowerCase() ? 0.5 : distance(typed, name);
    if (far < least) [best, least] = [name, far];
  }
  return best;
}

/** Restricted Damerau–Levenshtein distance, three rows at a time. */
function distance(a: string, b: string): number {
  if (a.length > 60 || b.length > 60) return Number.POSITIVE_INFINITY;
  let [older, old, row]: number[][] = [[], [], Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    [older, old, row] = [old!, row!, [i]];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min(old[j]! + 1, row[j - 1]! + 1, old[j - 1]! + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, older[j - 2]! + 1);
      row[j] = cost;
    }
  }
  return row![b.length]!;
}
