import type { ResultFinding } from '../../analysis/findings.ts';
import type { Result } from '../../spec/board.ts';
import type { Block, Cell, Row, Table } from '../block.ts';
import { aligned, differenceUnit, percent, steady, toSi, unitFor } from '../figures.ts';
import { dash, link, math } from '../inline.ts';
import { type Numbering, numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';
import { type Review, rankedChecks } from '../review.ts';
import type { Strip } from '../strip.ts';
import { limitsOn, quantilesOf, scaleFor } from '../strips.ts';
import { idTex, parted } from '../symbols.ts';
import { specifiedAs } from '../tolerance.ts';
import { saysOf } from '../trail.ts';
import { grouped } from '../words.ts';
import { chapter, section } from './chapter.ts';
import { decimal, sans, serif, strip, unit } from './columns.ts';
import { hurtingSide } from './equation.ts';
import { histogramsOf } from './histograms.ts';

/** Worst case, root-sum-square and simulated boards beside each other, and which part decides. */
export function tolerances(review: Review): Chapter | undefined {
  const limited = limitedResults(review);
  const numbers = numbering(9);
  const sections = [
    methods(review, limited, numbers),
    histograms(review, numbers),
    contributions(review, limited, numbers),
  ].filter((one) => one !== undefined);
  return sections.length ? chapter('tolerances', [reading(review)], sections) : undefined;
}

function reading({ findings }: Review): Block {
  return {
    kind: 'paragraph',
    text: [
      `The worst case is a promise: no board whose parts are inside their tolerances leaves it, and it alone decides. Root-sum-square takes every part as independent and the result as a straight line in each, at three standard deviations. The simulated figures come from ${grouped(findings.trials)} boards, seed ${findings.seed}${findings.trials_chosen === 'for digits' ? ', as many as their printed digits need to hold still' : ''}, with the conditions held where they hurt; they say how seldom boards come near the worst case.`,
    ],
  };
}

/** Results that a check limits by themselves, thinnest first. */
function limitedResults(review: Review): Result[] {
  const ids = rankedChecks(review).flatMap(({ id }) => {
    const { left } = review.checks.get(id)!;
    return left.kind === 'symbol' && review.findings.results[left.name] ? [left.name] : [];
  });
  return [...new Set(ids)].map((id) => review.results.get(id)!);
}

function methods(review: Review, limited: readonly Result[], numbers: Numbering): Section | undefined {
  const varying = limited.filter(({ id }) => spreads(review.findings.results[id]!));
  if (!varying.length) return undefined;
  const table: Table = {
    kind: 'table',
    id: 'three-methods',
    number: numbers.table(),
    caption: [
      'Results that a check limits, thinnest margin first. Worst case over everything; root-sum-square and simulated boards over the parts alone, at the conditions that hurt. Simulated: 0.135 to 99.865\u00a0%. A dash stands where a part acts on the result, but has no slope at its typical value. Each strip has its own scale; hatching is the side not allowed.',
    ],
    columns: [
      sans('Result'),
      decimal('Typical'),
      decimal('Worst min'),
      decimal('max'),
      decimal('Root-sum-sq. low'),
      decimal('high'),
      decimal('Simulated low'),
      decimal('high'),
      unit('unit'),
      strip(0.13),
    ],
    groups: [{ rows: varying.map((result) => methodRow(review, result)) }],
    wide: true,
  };
  return section('tolerances', 1, 'methods', 'Three methods side by side', [table]);
}

const spreads = ({ worst }: ResultFinding): boolean => worst.max > worst.min;

function methodRow(review: Review, result: Result): Row {
  const { nominal, worst, rss, spread } = review.findings.results[result.id]!;
  const simulated = spread ? quantilesOf(spread) : undefined;
  const values = [
    nominal,
    worst.min,
    worst.max,
    rss.min,
    rss.max,
    ...(simulated ? [simulated[0], simulated[2]] : []),
  ].map((x) => toSi(x, result.unit));
  const shared = unitFor(values, result.unit);
  const unit = shared.text;
  const numbers = aligned(values, shared, ['nearest', 'down', 'up']);
  if (spread)
    for (const i of [5, 6]) numbers[i] = steady(numbers[i]!, values[i]!, spread.sd * result.unit.scale, shared);
  const limits = limitsOn(review, result);
  // Where no part has a slope at typical, as for the size of an offset, a straight line says nothing.
  const flat = rss.min === rss.max;
  const strip: Strip = {
    scale: scaleFor([worst.min, worst.max, ...limits.map(({ at }) => at)]),
    worst: [worst.min, worst.max],
    typical: nominal,
    ...(flat ? {} : { rootSumSquare: [rss.min, rss.max] as const }),
    ...(simulated ? { spread: simulated } : {}),
    limits: limits.map(({ at, forbidden }) => ({ at, forbidden })),
    labels: [],
    says: `${result.says}: worst case ${numbers[1]} to ${numbers[2]}${flat ? '' : `, root-sum-square ${numbers[3]} to ${numbers[4]}`}${simulated ? `, simulated ${numbers[5]} to ${numbers[6]}` : ''} ${unit}.`,
  };
  const cell = (i: number): Cell =>
    numbers[i] === undefined || (flat && (i === 3 || i === 4))
      ? dash
      : { number: numbers[i], ...(thinEnd(review, result, limits[0]) === i ? { worst: true } : {}) };
  return { cells: [[link(result.id, result.id)], ...[0, 1, 2, 3, 4, 5, 6].map(cell), unit ? [unit] : dash, { strip }] };
}

/** Column of the end that a check with a thin margin minds. */
function thinEnd(
  review: Review,
  result: Result,
  thinnest: ReturnType<typeof limitsOn>[number] | undefined,
): number | undefined {
  if (!thinnest || thinnest.finding.verdict === 'pass') return undefined;
  return hurtingSide(review, result) === 'min' ? 1 : 2;
}

function histograms(review: Review, numbers: Numbering): Section | undefined {
  const figures = histogramsOf(review, numbers);
  return figures.length
    ? section('tolerances', 2, 'histograms', 'The thinnest checks, board by board', figures)
    : undefined;
}

/** For the thinnest results: what each input contributes. */
function contributions(review: Review, limited: readonly Result[], numbers: Numbering): Section | undefined {
  const results = limited.filter(({ id }) => review.findings.results[id]!.sensitivity.length > 0).slice(0, 10);
  if (!results.length) return undefined;
  const table: Table = {
    kind: 'table',
    id: 'contributions',
    number: numbers.table(),
    caption: [
      'What each input contributes to the results with the thinnest margins, largest share of the variance first; at most eight a result. Moves it: change of the result when the input goes from its least to its greatest value, all else typical. Variance: share over simulated boards, where conditions have none; worst: share of all swings together. Bar: variance; line: worst; both from nothing to the whole.',
    ],
    columns: [
      serif('Symbol'),
      sans('Part'),
      serif('What it is'),
      sans('As specified'),
      decimal('Moves it'),
      unit(),
      decimal('Variance, %'),
      decimal('Worst, %'),
      strip(0.14),
    ],
    groups: results.map((result) => ({
      title: `${result.says}, ${result.id}`,
      rows: contributionRows(review, result),
    })),
    wide: true,
  };
  return section('tolerances', 3, 'contributions', 'What each part contributes', [table]);
}

function contributionRows(review: Review, result: Result): Row[] {
  const { sensitivity } = review.findings.results[result.id]!;
  const shown = sensitivity.slice(0, 8);
  const swings = shown.map(({ swing }) => Math.abs(swing) * result.unit.scale);
  const unit = unitFor(swings, differenceUnit(result.unit));
  const numbers = aligned(swings, unit, [], 3);
  return shown.map(({ input: id, swing, variance, worst }, i) => {
    const input = review.inputs.get(id)!;
    return {
      cells: [
        [
          math(idTex(id)),
          ...(parted(id).circuit === parted(result.id).circuit || !parted(id).circuit
            ? []
            : [` of ${parted(id).circuit}`]),
        ],
        [input.refs ?? '–'],
        [saysOf(review.trail, review.inputs, input) ?? '–'],
        [input.value.kind === 'expression' ? input.value.text : specifiedAs(input.value)],
        { number: `${swing < 0 ? '↓' : '↑'} ${numbers[i]}` },
        unit.text ? [unit.text] : dash,
        input.value.kind === 'condition' ? dash : { number: percent(variance, 1, 'nearest') },
        { number: percent(worst, 1, 'nearest') },
        { strip: shareStrip(id, variance, worst) },
      ],
    };
  });
}

/** Both shares as bars from nothing to the whole, so that what decides is seen before it is read. */
const shareStrip = (input: string, variance: number, worst: number): Strip => ({
  scale: [0, 1],
  ...(worst > 0 ? { worst: [0, worst] as const } : {}),
  ...(variance > 0 ? { spread: [0, variance, variance] as const } : {}),
  limits: [],
  labels: [],
  says: `${input}: ${percent(variance, 0, 'nearest')} % of the variance, ${percent(worst, 0, 'nearest')} % of the worst case.`,
});
