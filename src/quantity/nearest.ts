/** Words longer than this are no slip of the finger, and comparing them would take long. */
const longest = 32;

/**
 * The candidates that `word` was probably meant to be: those that differ in upper and lower case only, or else those
 * with the fewest slips (a letter changed, missing, added, or two swapped), at most a third of the word. Best first.
 * @example nearest('kOhmm', ['kOhm', 'kohm', 'V']) // ['kOhm']
 */
export function nearest(word: string, candidates: Iterable<string>, most = 2): string[] {
  if (word.length > longest) return [];
  const allowed = Math.floor(word.length / 3);
  const ranked = [...candidates]
    .map((candidate) => ({ candidate, slips: slips(word, candidate) }))
    .sort((a, b) => a.slips - b.slips);
  const caseSlips = ranked.filter(({ candidate }) => candidate.toLowerCase() === word.toLowerCase());
  const closest = ranked.filter((one) => one.slips <= allowed && one.slips === ranked[0]!.slips);
  return (caseSlips.length > 0 ? caseSlips : closest).slice(0, most).map(({ candidate }) => candidate);
}

/** Edits between two words; a swap of neighbours counts as one (optimal string alignment). */
function slips(a: string, b: string): number {
  let twoAbove: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = a[i - 1] === b[j - 1] ? 0 : 1;
      row[j] = Math.min(above[j]! + 1, row[j - 1]! + 1, above[j - 1]! + changed);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) row[j] = Math.min(row[j]!, twoAbove[j - 2]! + 1);
    }
    twoAbove = above;
    above = row;
  }
  return above[b.length]!;
}
