import { modelFor } from '../../analysis/values-at.ts';
import { enclose } from '../../expression/readings/enclose.ts';
import { evaluate } from '../../expression/readings/value.ts';
import type { Figure } from '../block.ts';
import type { Reviewed } from '../by-id.ts';
import type { Bounds } from '../plot.ts';

/** Into how many pieces the range of the load is cut: coarse, then fine. */
const cuts = [4, 32] as const;
const points = 120;
const milli = 1000;

/** How a bound closes in: the same range of the load cut into ever more pieces, each with what interval arithmetic says of it. */
export function boundsFigure({ board, findings }: Reviewed): Figure {
  const { tape, slots, variables } = modelFor(board);
  const slot = slots.get('source.P')!;
  const load = variables.findIndex(({ id }) => id === 'source.R_L');
  const { min, max } = variables[load]!;
  const valueAt = (R: number): number =>
    evaluate(
      tape,
      Float64Array.from(variables, ({ typ }, i) => (i === load ? R : typ)),
    )[slot]! * milli;
  const rangeOver = (from: number, to: number): { low: number; high: number } => {
    const inputs = variables.map(({ typ }, i) => ({
      lo: i === load ? from : typ,
      hi: i === load ? to : typ,
      certain: true,
    }));
    const { lo, hi } = enclose(tape, inputs)[slot]!;
    return { low: lo * milli, high: hi * milli };
  };
  const pieces = cuts.map((count) =>
    evenly(min, max, count).map((from) => ({
      from,
      to: from + (max - min) / count,
      ...rangeOver(from, from + (max - min) / count),
    })),
  );
  const { worst } = findings.results['source.P']!;
  const plot: Bounds = {
    kind: 'bounds',
    xTitle: 'Load, Ω',
    yTitle: 'Power in the load, mW',
    line: [...evenly(min, max, points), max].map((x) => ({ x, y: valueAt(x) })),
    coarse: pieces[0]!,
    fine: pieces[1]!,
    labels: cuts.map((count) => `bound over ${count} pieces`),
    worst: { at: worst.max, label: `worst ${worst.max.toFixed(0)} mW, inside the range` },
  };
  return {
    kind: 'figure',
    id: 'guide-bounds',
    number: '1',
    caption: [
      'What interval arithmetic says of each piece of the range can only be too wide. More pieces bring the bound down to the curve.',
    ],
    width: 'column',
    alt: `Power in the load over its resistance, largest at ${worst.max.toFixed(0)} mW inside the range; boxes of ${cuts.join(' and ')} pieces enclose the curve, the finer ones closely.`,
    plot,
  };
}

const evenly = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / count);
