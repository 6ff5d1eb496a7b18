import { machineFor } from '../analysis/simulate/simd/machine.ts';
import { started } from '../analysis/simulate/simd/start.ts';
import { timed } from './median.ts';
import { boardsFor, type Subject } from './subject.ts';

export interface Phases {
  readonly sample: number;
  readonly evaluate: number;
  readonly summarise: number;
}

/** Milliseconds of each part of a simulation by itself, on a machine that is warm. */
export function phasesOf(subject: Subject, trials: number): Phases {
  const machine = machineFor(boardsFor(subject));
  const { block } = machine.layout;
  const exports = started(machine, () => undefined);
  const blocks = Math.ceil(trials / block);
  const times = (work: (from: number) => void): number =>
    timed(() => {
      for (let b = 0; b < blocks; b++) work(b * block);
    }).ms;
  return {
    sample: times((from) => exports.draw(from)),
    evaluate: times(() => exports.compute()),
    summarise: times(() => exports.count(block)),
  };
}
