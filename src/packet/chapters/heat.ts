import { formatValue } from '../../quantity/figure.ts';
import type { Result } from '../../spec/board.ts';
import type { Block, Column, Row, Table } from '../block.ts';
import { figureText, outward, percent, plain, toSi } from '../figures.ts';
import { dash, link, strong } from '../inline.ts';
import { numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { endTexts, limitsOn, resultStrip } from '../strips.ts';
import { idLink } from '../trail.ts';
import { chapter, section } from './chapter.ts';

/** Where heat arises, largest first, and what gets hot. */
export function heat(review: Review): Chapter | undefined {
  const numbers = numbering(10);
  const sections = [budget(review, numbers.table), temperatures(review, numbers.table)].filter(
    (one) => one !== undefined,
  );
  const arises = review.board.circuits.some(({ results }) => results.some((result) => result.heat));
  return arises && sections.length ? chapter('heat', [], sections) : undefined;
}

const decimal = (head: string): Column => ({ head: [head], align: 'decimal' });
const unit: Column = { head: [], align: 'unit' };

function budget(review: Review, number: () => string): Section | undefined {
  const { board, findings } = review;
  const sources = board.circuits.flatMap(({ results, count }) =>
    results.filter((result) => result.heat).map((result) => ({ result, count })),
  );
  const total = findings.results['board.heat'];
  if (!sources.length || !total) return undefined;
  const of = ({ result, count }: { result: Result; count: number }) => ({
    result,
    count,
    typical: findings.results[result.id]!.nominal * result.unit.scale * count,
    worst: findings.results[result.id]!.worst.max * result.unit.scale * count,
  });
  const rows = sources.map(of).toSorted((a, b) => b.worst - a.worst);
  const heatUnit = review.results.get('board.heat')!.unit;
  const typicalTotal = toSi(total.nominal, heatUnit);
  const row = ({ result, count, typical, worst }: ReturnType<typeof of>): Row => {
    const [usual, most] = [formatValue(typical, heatUnit), outward(worst, heatUnit, 'up')];
    return {
      cells: [
        idLink(review.trail, result.id),
        [result.says],
        [count > 1 ? `× ${count}` : '–'],
        { number: usual.number },
        [usual.unit],
        typicalTotal > 0 ? { number: percent(typical / typicalTotal, 1, 'nearest') } : dash,
        { number: most.number, worst: true },
        [most.unit],
      ],
    };
  };
  const [usual, most] = [formatValue(typicalTotal, heatUnit), outward(toSi(total.worst.max, heatUnit), heatUnit, 'up')];
  const sum: Row = {
    cells: [
      idLink(review.trail, 'board.heat'),
      [strong('The whole board')],
      dash,
      { number: usual.number, strong: true },
      [usual.unit],
      { number: percent(1) },
      { number: most.number, worst: true, strong: true },
      [most.unit],
    ],
  };
  const largest = rows[0]!;
  const lead: Block = {
    kind: 'paragraph',
    lead: true,
    text: [
      `At worst the board gives off ${figureText(most)}, typically ${figureText(plain(typicalTotal, heatUnit))}. The largest share is `,
      link(largest.result.id, largest.result.id),
      ` with up to ${figureText(outward(largest.worst, heatUnit, 'up'))}.`,
    ],
  };
  const table: Table = {
    kind: 'table',
    id: 'heat-budget',
    number: number(),
    caption: [
      'Loss budget, largest first. Each line is at its own worst corner; the sum takes all lines at one corner, and so may be less than the lines together.',
    ],
    columns: [
      { head: ['Heat'], align: 'left', face: 'sans' },
      { head: ['What it is'], align: 'left' },
      { head: ['Alike'], align: 'left' },
      decimal('Typical'),
      unit,
      decimal('Share, %'),
      decimal('Worst'),
      unit,
    ],
    groups: [{ rows: [...rows.map(row), sum] }],
    wide: true,
  };
  return section('heat', 1, 'budget', 'Loss budget', [lead, table]);
}

/** Every result that is a temperature; a limit of one may hang on a difference, so none is printed here. */
function temperatures(review: Review, number: () => string): Section | undefined {
  const hot = review.board.circuits.flatMap(({ results }) =>
    results.filter((result) => result.unit.offset !== 0 && varies(review, result)),
  );
  if (!hot.length) return undefined;
  const row = (result: Result): Row => {
    const { nominal, worst } = review.findings.results[result.id]!;
    const [low, high] = endTexts(worst, result.unit);
    const strip = resultStrip(review, result, 'max');
    return {
      cells: [
        idLink(review.trail, result.id),
        [result.says],
        [figureText(formatValue(toSi(nominal, result.unit), result.unit, { digits: 3 }))],
        [low],
        [strong(high)],
        limitsText(review, result),
        strip ? { strip: { ...strip, labels: [] } } : dash,
      ],
    };
  };
  const table: Table = {
    kind: 'table',
    id: 'temperatures',
    number: number(),
    caption: ['Temperatures. A limit stands here where a check compares the temperature itself with one.'],
    columns: [
      { head: ['Result'], align: 'left', face: 'sans' },
      { head: ['What it is'], align: 'left' },
      { head: ['Typical'], align: 'right' },
      { head: ['Worst min'], align: 'right' },
      { head: ['Worst max'], align: 'right' },
      { head: ['Limit'], align: 'left', face: 'sans' },
      { head: [], align: 'strip', width: 0.2 },
    ],
    groups: [{ rows: hot.map(row) }],
    wide: true,
  };
  return section('heat', 2, 'temperatures', 'Temperatures', [table]);
}

const varies = (review: Review, { id }: Result): boolean => {
  const { worst } = review.findings.results[id]!;
  return worst.max > worst.min;
};

function limitsText(review: Review, result: Result) {
  const limits = limitsOn(review, result).map(
    ({ check, finding, forbidden }) =>
      `${forbidden === 'above' ? '≤' : '≥'} ${figureText(plain(toSi(finding.limit!, check.unit), check.unit))}`,
  );
  return limits.length ? [limits.join(', ')] : dash;
}
