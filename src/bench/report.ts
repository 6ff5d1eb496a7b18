import { textTable } from '../commands/text-table.ts';
import type { Contest } from './contest.ts';

const ms = (value: number): string => value.toFixed(value < 10 ? 1 : 0);

/** Lines of a contest: the whole, then its parts where they were timed. Ratios come first. */
export function contestLines(name: string, { ours, numpy, phases, differences }: Contest): string[][] {
  const line = (what: string, a: number, b: number): string[] => [(a / b).toFixed(2), ms(a), ms(b), what];
  return [
    line(differences.length ? `${name} (results differ)` : name, ours, numpy),
    ...(['sample', 'evaluate', 'summarise'] as const).flatMap((part) =>
      phases ? [line(`  ${part}`, phases.ours[part], phases.numpy[part])] : [],
    ),
  ];
}

export const table = (lines: readonly string[][]): string => textTable(['ratio', 'ours', 'NumPy', ''], lines);
