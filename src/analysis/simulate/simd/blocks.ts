import type { Boards } from '../boards.ts';
import type { Blocks } from '../whole.ts';
import { machineFor } from './machine.ts';
import { started } from './start.ts';

/** Boards computed by a machine, to be looked at one by one. */
export function simdBlocks(boards: Boards): Blocks {
  const machine = machineFor(boards);
  const { block, columns, stride } = machine.layout;
  const { draw, compute, memory } = started(machine, () => undefined);
  const outputs = boards.outputs.map((_, k) => new Float64Array(memory.buffer, columns + k * stride, block));
  return {
    block,
    run: (from) => {
      draw(from);
      compute();
      return outputs;
    },
  };
}
