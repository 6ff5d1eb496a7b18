import { formatValue } from '../../quantity/figure.ts';
import type { Result } from '../../spec/board.ts';
import type { Block, Row, Table } from '../block.ts';
import { figureText, fixed, outward, percent, plain, toSi } from '../figures.ts';
import { dash, link, listed, math, strong } from '../inline.ts';
import { type Numbering, numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';
import type { Review } from '../review.ts';
import type { Strip } from '../strip.ts';
import { endTexts, limitsOn, resultStrip } from '../strips.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { idLink } from '../trail.ts';
import { chapter, section } from './chapter.ts';
import { decimal, right, sans, serif, strip } from './columns.ts';
import { currentPath } from './current-path.ts';
import { boardSweeps, plotAnchor } from './sweeps.ts';

/** Where heat arises, largest first, and what gets hot. */
export function heat(review: Review): Chapter | undefined {
  const numbers = numbering(10);
  const sections = [budget(review, numbers.table, numbers), temperatures(review, numbers.table)].filter(
    (one) => one !== undefined,
  );
  const path = currentPath(review, sections.length + 1, numbers);
  const arises = review.board.circuits.some(({ results }) => results.some((result) => result.heat));
  return arises && sections.length ? chapter('heat', [], path ? [...sections, path] : sections) : undefined;
}

/** A loss of all alike together, in watts. */
interface Loss {
  readonly result: Result;
  readonly count: number;
  readonly typical: number;
  readonly worst: number;
}

function budget(review: Review, number: () => string, figures: Numbering): Section | undefined {
  const { findings } = review;
  const total = findings.results['board.heat'];
  if (!total) return undefined;
  const losses = lossesOf(review).toSorted((a, b) => b.worst - a.worst);
  const watt = review.results.get('board.heat')!.unit;
  const sum = { typical: toSi(total.nominal, watt), worst: toSi(total.worst.max, watt) };
  const largest = losses[0]!;
  const lead: Block = {
    kind: 'paragraph',
    lead: true,
    text: [
      `At worst the board gives off ${figureText(outward(sum.worst, watt, 'up'))}, typically ${figureText(plain(sum.typical, watt))}. The largest share is `,
      link(largest.result.id, largest.result.id),
      ` with up to ${figureText(outward(largest.worst, watt, 'up'))}.`,
    ],
  };
  const table: Table = {
    kind: 'table',
    id: 'heat-losses',
    number: number(),
    caption: [
      'Loss budget, largest first. Each line is at its own worst corner; the sum takes all lines at one corner, and so may be less than the lines together. The strips share one scale, from nothing to the largest line.',
    ],
    columns: [
      sans('Heat'),
      serif('What it is'),
      serif('Alike'),
      decimal('Typical, W'),
      decimal('Share, %'),
      decimal('Worst, W'),
      strip(0.26),
    ],
    groups: [
      { rows: [...losses.map((loss) => lossRow(review, loss, sum.typical, largest.worst)), sumRow(review, sum)] },
    ],
    wide: true,
  };
  return section('heat', 1, 'budget', 'Loss budget', [lead, table, ...boardSweeps(review, figures)]);
}

function lossesOf({ board, findings }: Review): Loss[] {
  return board.circuits.flatMap(({ results, count }) =>
    results.flatMap((result): Loss[] => {
      const { nominal, worst } = findings.results[result.id]!;
      const all = (value: number) => toSi(value, result.unit) * count;
      return result.heat ? [{ result, count, typical: all(nominal), worst: all(worst.max) }] : [];
    }),
  );
}

function lossRow({ trail }: Review, { result, count, typical, worst }: Loss, total: number, largest: number): Row {
  return {
    cells: [
      idLink(trail, result.id),
      [result.says],
      count > 1 ? [`× ${count}`] : dash,
      watts(typical, 'nearest'),
      total > 0 ? { number: percent(typical / total, 1, 'nearest') } : dash,
      watts(worst, 'up'),
      { strip: lossStrip(result.id, typical, worst, largest) },
    ],
  };
}

/** Ranked bars on one scale: the worst case as a line from nothing, typical as a ring on it. */
const lossStrip = (id: string, typical: number, worst: number, largest: number): Strip => ({
  scale: [0, largest > 0 ? largest * 1.02 : 1],
  worst: [0, worst],
  typical,
  limits: [],
  labels: [],
  says: `${id}: ${watts(typical, 'nearest').number} W typically, ${watts(worst, 'up').number} W at worst.`,
});

function sumRow({ trail }: Review, { typical, worst }: { typical: number; worst: number }): Row {
  const all = { number: percent(1, 1, 'nearest'), strong: true };
  return {
    cells: [
      idLink(trail, 'board.heat'),
      [strong('The whole board')],
      dash,
      { ...watts(typical, 'nearest'), strong: true },
      all,
      { ...watts(worst, 'up'), strong: true },
      dash,
    ],
  };
}

/** In milliwatt steps, so that lines can be added up. */
const watts = (value: number, round: 'nearest' | 'up'): { number: string } => ({
  number: value > 0 && value < 0.0005 && round === 'nearest' ? '< 0.001' : fixed(value, 3, round),
});

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
      sans('Result'),
      serif('What it is'),
      right('Typical'),
      right('Worst min'),
      right('Worst max'),
      sans('Limit'),
      strip(0.2),
    ],
    groups: [{ rows: hot.map(row) }],
    wide: true,
  };
  return section('heat', 2, 'temperatures', 'Temperatures', [table, ...overCurrent(review, hot)]);
}

/** Where a temperature is drawn over what drives it. */
function overCurrent({ findings }: Review, hot: readonly Result[]): Block[] {
  const ids = new Set(hot.map(({ id }) => id));
  const own = new Map<string, number>();
  const drawn = findings.sweeps.flatMap(({ of, over, circuit }): Text[] => {
    own.set(circuit, (own.get(circuit) ?? 0) + 1);
    return ids.has(of) ? [[link(of, plotAnchor(of, own.get(circuit)!)), ' over ', math(idTex(over))]] : [];
  });
  return drawn.length ? [{ kind: 'paragraph', text: ['Drawn over what drives them: ', ...listed(drawn), '.'] }] : [];
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
