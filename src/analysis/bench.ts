import type { BenchReading } from '../spec/bench/bench-reading.ts';
import type { Board, Circuit, TestPoint } from '../spec/board.ts';
import type { BenchFinding, BenchVerdict, StimulusFinding } from './findings.ts';
import { shareBelow } from './share-below.ts';
import { type StimulusOptions, stimulusFinding } from './stimulus.ts';
import { differenceInUnit, inUnit } from './units.ts';

/**
 * Every reading of the bench beside what was predicted for it: the same stimulus on a new board, all else at typical.
 * @param known  findings of the test points as the spec states them
 */
export function benchFindings(
  board: Board,
  known: readonly StimulusFinding[],
  options: StimulusOptions,
): BenchFinding[] {
  const predictions = new Map<string, StimulusFinding>();
  return board.bench.map((reading) => {
    const circuit = board.circuits.find(({ id }) => reading.reads.startsWith(`${id}.`))!;
    const point = pointOf(circuit, reading);
    const key = JSON.stringify([point.name, point.reads, ...[...point.when].map(([id, { text }]) => [id, text])]);
    const stated = reading.when.size ? undefined : known.find(({ id }) => id === reading.point);
    const prediction = stated ?? predictions.get(key) ?? stimulusFinding(board, circuit, point, options);
    predictions.set(key, prediction);
    return beside(board, circuit, reading, prediction);
  });
}

/** The test point with what was applied in the place of its stimulus; for a bare result one with nothing but that. */
function pointOf(circuit: Circuit, { point, reads, when }: BenchReading): TestPoint {
  const stated = circuit.testPoints.find(({ name }) => `${circuit.id}.${name}` === point);
  return { name: stated?.name ?? '', reads, when: new Map([...(stated?.when ?? []), ...when]) };
}

function beside(board: Board, circuit: Circuit, reading: BenchReading, prediction: StimulusFinding): BenchFinding {
  const { unit } = circuit.results.find(({ id }) => id === reading.reads)!;
  const measured = inUnit(reading.value, unit);
  const uncertainty = differenceInUnit(reading.uncertainty, unit);
  const { expected, min, max, spread } = prediction;
  // U is the half-width at 95 %; as a standard deviation it counts half (JCGM 100, 6.3.3: k = 2).
  const width = Math.hypot(uncertainty / 2, spread?.sd ?? 0);
  const z = width > 0 ? (measured - (spread?.mean ?? expected)) / width : null;
  const { sample, instrument, by, remark } = reading;
  return {
    id: reading.id,
    line: reading.line,
    point: reading.point ?? null,
    reads: reading.reads,
    unit: prediction.unit,
    when: prediction.when,
    measured,
    uncertainty,
    expected,
    min,
    max,
    // Guard band of the whole uncertainty at either end (ILAC-G8:09/2019, 4.2.2).
    accept_from: min + uncertainty,
    accept_to: max - uncertainty,
    z,
    percentile: spread ? shareBelow(spread, measured) : null,
    verdict: verdictOn({ measured, uncertainty, min, max, z }),
    closes: board.requirements
      .filter(({ tested }) => tested.includes(reading.point ?? reading.reads))
      .map(({ id }) => id),
    date: reading.date,
    ...(sample ? { sample } : {}),
    ...(instrument ? { instrument } : {}),
    ...(by ? { by } : {}),
    ...(remark ? { remark } : {}),
  };
}

/**
 * What a reading says about the prediction. Outside: not even its uncertainty brings it in. Undecided: the uncertainty reaches
 * over an end. Unusual: inside, but more than two standard deviations from the mean, as one board in twenty is by chance.
 */
export function verdictOn({
  measured,
  uncertainty,
  min,
  max,
  z,
}: Pick<BenchFinding, 'measured' | 'uncertainty' | 'min' | 'max' | 'z'>): BenchVerdict {
  if (measured + uncertainty < min || measured - uncertainty > max) return 'outside';
  // What no part moves has no room for a guard band: it agrees as well as the meter can tell.
  if (max > min && (measured - uncertainty < min || measured + uncertainty > max)) return 'undecided';
  return z !== null && Math.abs(z) > 2 ? 'unusual' : 'as predicted';
}
