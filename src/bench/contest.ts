import type { Simulation } from '../analysis/simulate/simulate.ts';
import { threaded } from '../site/simulate-threads.ts';
import { differences } from './compare.ts';
import { median, timed } from './median.ts';
import type { Numpy, NumpyAnswer } from './numpy.ts';
import { type Phases, phasesOf } from './phases.ts';
import { run, type Subject } from './subject.ts';

/** Milliseconds of both, medians of runs that took turns, and where their results differ by more than chance. */
export interface Contest {
  readonly ours: number;
  readonly numpy: number;
  readonly phases?: { readonly ours: Phases; readonly numpy: Phases };
  readonly differences: readonly string[];
}

/** One thread against one process. */
export async function contest(subject: Subject, numpy: Numpy, trials: number, rounds: number): Promise<Contest> {
  const turns = await takeTurns(
    rounds,
    () => run(subject, trials),
    (seed) => numpy.ask('alone', trials, seed),
  );
  const phases = turns.ours.map(() => phasesOf(subject, trials));
  const middle = (of: (phase: Phases) => number): number => median(phases.map(of));
  const part = (of: (answer: NumpyAnswer) => number | undefined): number =>
    1000 * median(turns.answers.map((a) => of(a) ?? 0));
  return {
    ...resultOf(subject, turns, trials),
    phases: {
      ours: {
        sample: middle((p) => p.sample),
        evaluate: middle((p) => p.evaluate),
        summarise: middle((p) => p.summarise),
      },
      numpy: { sample: part((a) => a.sample), evaluate: part((a) => a.evaluate), summarise: part((a) => a.summarise) },
    },
  };
}

/** Two threads against two processes. */
export async function contestOfTwo(subject: Subject, numpy: Numpy, trials: number, rounds: number): Promise<Contest> {
  const turns = await takeTurns(
    rounds,
    () => run(subject, trials, threaded(2)),
    (seed) => numpy.ask('pair', trials, seed),
  );
  return resultOf(subject, turns, trials);
}

interface Turns {
  readonly ours: readonly number[];
  readonly answers: readonly NumpyAnswer[];
  readonly simulation: Simulation;
}

/** Each goes first every other time; the first round only warms both. */
async function takeTurns(
  rounds: number,
  our: () => Simulation,
  their: (seed: number) => Promise<NumpyAnswer>,
): Promise<Turns> {
  const ours: number[] = [];
  const answers: NumpyAnswer[] = [];
  let simulation = our();
  await their(0);
  const go = (): void => {
    const { ms, result } = timed(our);
    ours.push(ms);
    simulation = result;
  };
  for (let round = 1; round <= rounds; round++) {
    if (round % 2 === 1) go();
    answers.push(await their(round));
    if (round % 2 === 0) go();
  }
  return { ours, answers, simulation };
}

function resultOf(subject: Subject, { ours, answers, simulation }: Turns, trials: number): Contest {
  return {
    ours: median(ours),
    numpy: 1000 * median(answers.map(({ total }) => total)),
    differences: differences(subject, simulation, answers[0]!.results, trials),
  };
}
