/**
 * Preferred values of resistors and capacitors.
 * Source: IEC 60063:2015, tables of preferred values; those of E192 are 100 · 10^(i/192), rounded, but for 920.
 */

/** E24 in tenths; E12, E6 and E3 are every second, fourth and eighth of it. They do not follow a formula throughout. */
const e24 = words(`
  10 11 12 13 15 16 18 20 22 24 27 30 33 36 39 43 47 51 56 62 68 75 82 91
`);
/** E192 in hundredths; E96 and E48 are every second and fourth of it. */
const e192 = words(`
  100 101 102 104 105 106 107 109 110 111 113 114 115 117 118 120 121 123 124 126 127 129 130 132
  133 135 137 138 140 142 143 145 147 149 150 152 154 156 158 160 162 164 165 167 169 172 174 176
  178 180 182 184 187 189 191 193 196 198 200 203 205 208 210 213 215 218 221 223 226 229 232 234
  237 240 243 246 249 252 255 258 261 264 267 271 274 277 280 284 287 291 294 298 301 305 309 312
  316 320 324 328 332 336 340 344 348 352 357 361 365 370 374 379 383 388 392 397 402 407 412 417
  422 427 432 437 442 448 453 459 464 470 475 481 487 493 499 505 511 517 523 530 536 542 549 556
  562 569 576 583 590 597 604 612 619 626 634 642 649 657 665 673 681 690 698 706 715 723 732 741
  750 759 768 777 787 796 806 816 825 835 845 856 866 876 887 898 909 920 931 942 953 965 976 988
`);

function words(text: string): number[] {
  return text.trim().split(/\s+/).map(Number);
}
const every = (step: number, of: readonly number[]): number[] => of.filter((_, i) => i % step === 0);

export type SeriesName = 'E3' | 'E6' | 'E12' | 'E24' | 'E48' | 'E96' | 'E192';

/** The values of one decade, in `parts` of one: 4.7 is 47 of 10, 4.75 is 475 of 100. */
export interface Series {
  readonly name: SeriesName;
  readonly values: readonly number[];
  readonly parts: 10 | 100;
  /** The tolerance that the standard gives it, as a ratio. */
  readonly tolerance: number;
}

/** From the coarsest to the finest. E3 is for tolerances wider than 20 %. */
export const allSeries: readonly Series[] = [
  { name: 'E3', values: every(8, e24), parts: 10, tolerance: Number.POSITIVE_INFINITY },
  { name: 'E6', values: every(4, e24), parts: 10, tolerance: 0.2 },
  { name: 'E12', values: every(2, e24), parts: 10, tolerance: 0.1 },
  { name: 'E24', values: e24, parts: 10, tolerance: 0.05 },
  { name: 'E48', values: every(4, e192), parts: 100, tolerance: 0.02 },
  { name: 'E96', values: every(2, e192), parts: 100, tolerance: 0.01 },
  { name: 'E192', values: e192, parts: 100, tolerance: 0.005 },
];

export const seriesNamed = (name: SeriesName): Series => allSeries.find((one) => one.name === name)!;

/**
 * The series that a tolerance belongs to; between two steps the finer one, since a part is no looser than its series.
 * @param tolerance  half width as a ratio
 * @example seriesFor(0.01).name // 'E96'
 * @example seriesFor(0.001).name // 'E192'
 */
export function seriesFor(tolerance: number): Series {
  const room = 1 + 1e-9;
  if (tolerance > 0.2 * room) return seriesNamed('E3');
  return allSeries.find((one) => one.tolerance <= tolerance * room) ?? seriesNamed('E192');
}
