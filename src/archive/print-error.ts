import type { Misfit } from './misfits.ts';
import { placeInWords } from './places.ts';

/** The print document cannot become a packet that may be handed out. Each problem is a sentence that says where. */
export class PrintError extends Error {
  override readonly name = 'PrintError';
  readonly problems: readonly string[];
  constructor(document: string, problems: readonly string[]) {
    super(`${document} was not printed:\n${problems.map((problem) => `  ${problem}`).join('\n')}`);
    this.problems = problems;
  }
}

export function misfitInWords({ how, px, ...place }: Misfit): string {
  const where = placeInWords(place);
  if (how === 'cut') return `${where} is cut off: ${px} px do not show in print.`;
  if (how === 'bottom') return `${where} holds ${px} px more than its height; they are printed over what follows.`;
  return `${where} reaches ${px} px over the ${how} edge of the page area.`;
}

/** @param scale  what the browser shrank to, below 1 */
export function shrunkInWords(scale: number, offenders: readonly Misfit[]): string[] {
  const percent = ((1 - scale) * 100).toFixed(1);
  const where =
    offenders.length === 0 ? ' What it is was not found; look for long words, wide tables and fixed widths.' : '';
  return [
    `Something is wider than the page, so the browser made everything ${percent} % smaller.${where}`,
    ...offenders.slice(0, 5).map(misfitInWords),
  ];
}
