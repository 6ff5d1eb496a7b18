import type { Board } from '../spec/board.ts';
import { fixed } from './figures.ts';

/**
 * What goes with a measured value: `r(I) −0.36`; empty where nothing does.
 * @example correlationText(board, 'x.V') // ', r(I) −0.36, r(phi) 0.86'
 */
export function correlationText({ circuits }: Board, id: string): string {
  const correlations = circuits.flatMap((circuit) => circuit.correlations ?? []).find(({ of }) => of.includes(id));
  if (!correlations) return '';
  const row = correlations.coefficients[correlations.of.indexOf(id)]!;
  return correlations.of
    .flatMap((other, i) => (other === id || row[i] === 0 ? [] : [`, r(${other.split('.')[1]}) ${fixed(row[i]!, 2)}`]))
    .join('');
}
