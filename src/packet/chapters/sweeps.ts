import type { SweepFinding, SweepPoint } from '../../analysis/findings.ts';
import type { Unit } from '../../quantity/unit.ts';
import { parseUnit } from '../../quantity/units.ts';
import type { Circuit, Input } from '../../spec/board.ts';
import type { Figure } from '../block.ts';
import { figureText, outward, plain, plainTyped, toSi, typedUnitFor, unitFor } from '../figures.ts';
import { joined, link, math } from '../inline.ts';
import type { Numbering } from '../numbering.ts';
import type { Curve, CurvePoint } from '../plot.ts';
import type { Review } from '../review.ts';
import { whatToSee } from '../sweep-sentence.ts';
import { sweepTable } from '../sweep-table.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { checkLink, saysOf } from '../trail.ts';
import { briefly } from '../words.ts';

/** The plots of a circuit, two abreast; an odd one at the end has the width of the text. */
export function sweepsOf(review: Review, circuit: Circuit, numbers: Numbering): Figure[] {
  const own = review.findings.sweeps.filter((sweep) => sweep.circuit === circuit.id);
  return own.map((sweep, i) => {
    const alone = i === own.length - 1 && own.length % 2 === 1;
    return figureOf(review, sweep, i, numbers.figure(), alone ? 'column' : 'half');
  });
}

/** Sums of the board over the condition that moves them most. */
export function boardSweeps(review: Review, numbers: Numbering): Figure[] {
  const own = review.findings.sweeps.filter(({ circuit }) => circuit === 'board');
  return own.map((sweep, i) => figureOf(review, sweep, i, numbers.figure(), 'column'));
}

/** Anchor of a plot: what it shows, and which of its circuit's plots it is, from 1. */
export const plotAnchor = (of: string, position: number): string => `plot-${of}-${position}`;

/** Units in which a curve is drawn, and its numbers turned into them. */
interface Drawn {
  readonly of: Unit;
  readonly over: Unit;
  readonly y: (value: number) => number;
  readonly x: (value: number) => number;
}

function figureOf(
  review: Review,
  sweep: SweepFinding,
  position: number,
  number: string,
  width: Figure['width'],
): Figure {
  const result = review.results.get(sweep.of)!;
  const input = review.inputs.get(sweep.over)!;
  const drawn = drawnIn(sweep, result.unit, input.unit);
  const check = sweep.check === undefined ? undefined : review.checks.get(sweep.check);
  const sentence = whatToSee({
    sweep,
    of: result.unit,
    over: input.unit,
    ...(sweep.slack_unit ? { slack: parseUnit(sweep.slack_unit) } : {}),
  });
  const plot = plotOf(review, sweep, drawn, result.says, input);
  const limit = check ? [', against ', checkLink(check.id)] : [];
  return {
    kind: 'figure',
    id: plotAnchor(sweep.of, position + 1),
    number,
    caption: [
      link(sweep.of, sweep.of),
      ' over ',
      ...axisText(review, sweep),
      ...limit,
      `. ${sentence}`,
      ...remarks(sweep),
    ],
    plot,
    width,
    alt: `${plot.yTitle} over ${plot.xTitle}, typical and worst case. ${sentence}`,
    data: sweepTable(sweep, drawn),
  };
}

/** What the axis is: the symbol, and what stands behind it where it has a name of its own. */
function axisText({ trail }: Review, { over, stands_for: root }: SweepFinding): Text {
  const own: Text = [math(idTex(over))];
  if (root === over) return own;
  const known = trail.equations.has(root) || !root.includes('.') || trail.sections.has(root.split('.')[0]!);
  return known ? [...own, ' (', link(root, root), ')'] : own;
}

function remarks(sweep: SweepFinding): Text {
  const conditions = sweep.apart.filter((id) => !/ (drift|ageing|tracking)/.test(id) && !id.includes('#'));
  const apart: Text = conditions.length
    ? [
        ' Moved by itself, although ',
        ...joined(
          conditions.slice(0, 4).map((id): Text => [math(idTex(id))]),
          ', ',
        ),
        ' act on both: the band may be wider than can occur.',
      ]
    : [];
  const gap = sweep.proven ? '' : ' Not proven all along.';
  const data = sweep.certain ? '' : ' Part of the axis lies outside the range of the data.';
  return [...apart, gap, data].filter((one) => one !== '');
}

function drawnIn(sweep: SweepFinding, of: Unit, over: Unit): Drawn {
  const points = sweep.runs.flat();
  const heights = points.flatMap(({ min, max, limit }) => [min, max, ...(limit === undefined ? [] : [limit])]);
  const [ofDrawn, overDrawn] = [
    unitFor(
      heights.map((y) => toSi(y, of)),
      of,
    ),
    typedUnitFor(
      points.map(({ x }) => toSi(x, over)),
      over,
    ),
  ];
  const turned = (from: Unit, to: Unit) => (value: number) =>
    Number(((toSi(value, from) - to.offset) / to.scale).toPrecision(12));
  return { of: ofDrawn, over: overDrawn, y: turned(of, ofDrawn), x: turned(over, overDrawn) };
}

/** Beyond this ratio of its ends, an axis above nought goes by decades. */
const decades = 30;

function plotOf(review: Review, sweep: SweepFinding, { of, over, x, y }: Drawn, says: string, input: Input): Curve {
  const points = sweep.runs.flatMap((run, i) => run.map((point) => drawnPoint(point, i, x, y)));
  const lows = points.flatMap(({ low, limit }) => [low, ...(limit === undefined ? [] : [limit])]);
  const highs = points.map(({ high }) => high);
  const spans = (least: number, most: number) => least > 0 && most / least >= decades;
  const across = spans(points[0]!.x, points.at(-1)!.x);
  return {
    kind: 'curve',
    xTitle: titled(briefly(saysOf(review.trail, review.inputs, input) ?? input.symbol), over),
    yTitle: titled(briefly(says), of),
    points,
    typicalLabel: 'all else typical',
    ...limitOf(review, sweep, points, of),
    ends: [endOf(sweep, points, of, review)],
    cases: casesOf(review, sweep, x),
    ...(sweep.axis === 'choice' ? { chosen: chosenAt(sweep, input, x) } : {}),
    // Heights by decades only beside an axis by decades: a loss over current is read on an even scale.
    decades: { x: across, y: across && spans(Math.min(...lows), Math.max(...highs)) },
  };
}

function drawnPoint(
  point: SweepPoint,
  run: number,
  x: (value: number) => number,
  y: (value: number) => number,
): CurvePoint {
  return {
    x: x(point.x),
    typical: y(point.typical),
    low: y(point.min),
    high: y(point.max),
    run,
    ...(point.limit === undefined ? {} : { limit: y(point.limit) }),
  };
}

const titled = (what: string, unit: Unit): string => (unit.text ? `${what}, ${unit.text}` : what);

/** A level wall where the limit is the same all along, else a line that goes with the points. */
function limitOf(
  review: Review,
  { check: id }: SweepFinding,
  points: readonly CurvePoint[],
  unit: Unit,
): Pick<Curve, 'limits' | 'limitLine'> {
  const check = id === undefined ? undefined : review.checks.get(id);
  const limits = points.flatMap(({ limit }) => limit ?? []);
  if (!check || limits.length < points.length) return { limits: [] };
  const forbidden = check.sense === 'atMost' ? ('above' as const) : ('below' as const);
  const [low, high] = [Math.min(...limits), Math.max(...limits)];
  if (high - low > 1e-9 * Math.abs(high)) return { limits: [], limitLine: { forbidden, label: 'limit' } };
  const label = `limit ${figureText(plainTyped(low * unit.scale + unit.offset, unit))}`;
  return { limits: [{ at: low, forbidden, label }] };
}

/** The worst point: on the side that the check minds, where its slack is least; the greatest where no check limits it. */
function endOf(sweep: SweepFinding, points: readonly CurvePoint[], unit: Unit, review: Review): Curve['ends'][number] {
  const all = sweep.runs.flat();
  const sense = sweep.check === undefined ? 'atMost' : review.checks.get(sweep.check)!.sense;
  const bad = ({ slack, max }: SweepPoint): number => (slack === undefined ? max : -slack);
  const index = all.reduce((best, point, i) => (bad(point) > bad(all[best]!) ? i : best), 0);
  const point = points[index]!;
  const y = sense === 'atMost' ? point.high : point.low;
  const si = y * unit.scale + unit.offset;
  return { x: point.x, y, label: `worst ${figureText(outward(si, unit, sense === 'atMost' ? 'up' : 'down', 3))}` };
}

/** Named operating cases that narrow the condition. */
function casesOf({ board }: Review, sweep: SweepFinding, x: (value: number) => number): Curve['cases'] {
  if (sweep.axis !== 'condition') return [];
  return board.cases.flatMap(({ name, ranges }) => {
    const range = ranges.get(sweep.stands_for);
    if (!range) return [];
    const { unit } = range;
    const inUnit = (si: number) => (si - unit.offset) / unit.scale;
    return [{ from: x(inUnit(range.min)), to: x(inUnit(range.max)), label: name }];
  });
}

function chosenAt({ over_typical: typical }: SweepFinding, { unit }: Input, x: (value: number) => number) {
  return { x: x(typical), label: `as chosen, ${figureText(plain(toSi(typical, unit), unit))}` };
}
