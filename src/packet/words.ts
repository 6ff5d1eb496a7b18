const small = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** A count in a sentence: in letters up to twelve. `inWords(3)` → `three` */
export const inWords = (count: number): string => small[count] ?? grouped(count);

/** `counted(1, 'check')` → `one check`, `counted(40, 'check')` → `40 checks` */
export const counted = (count: number, noun: string, plural = `${noun}s`): string =>
  `${inWords(count)} ${count === 1 ? noun : plural}`;

/** The same in digits. `tallied(1, 'check')` → `1 check` */
export const tallied = (count: number, noun: string, plural = `${noun}s`): string =>
  `${grouped(count)} ${count === 1 ? noun : plural}`;

/** Groups of three digits from five digits on, parted by a thin space: `100 000`. */
export function grouped(count: number): string {
  const digits = String(count);
  return digits.length < 5 ? digits : digits.replaceAll(/\B(?=(\d{3})+$)/g, '\u2009');
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A sentence ends with one point, however it was typed. `sentence('hot parts age')` → `Hot parts age.` */
export const sentence = (text: string): string => `${capital(text.trim()).replace(/[.\s]+$/, '')}.`;

/** A name without what explains it: `briefly('Voltage of one cell, from empty to full')` → `Voltage of one cell` */
export const briefly = (says: string): string => says.replace(/\s*[,;:(].*$/s, '') || says;
