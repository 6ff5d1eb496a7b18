import { parameter } from '../../../expression/wasm/code.ts';
import { farAngle } from '../../../expression/wasm/functions/turn.ts';
import { ModuleBuilder } from '../../../expression/wasm/module.ts';
import { tapeCode } from '../../../expression/wasm/tape.ts';
import type { Boards } from '../boards.ts';
import { normalTable } from '../normal-table.ts';
import { countFunction } from './count.ts';
import { Draws } from './draw.ts';
import { emptied, tally } from './tally.ts';
import { tallyLayout } from './tally-layout.ts';

/** Where a machine keeps what: addresses in its memory. Plain data, to hand to a thread. */
export interface Layout {
  /** Boards in a block. */
  readonly block: number;
  readonly outputs: number;
  /** The first output's column; the next ones follow at `stride`. */
  readonly columns: number;
  readonly stride: number;
  readonly tallies: number;
  /** Room for kept values: `storeSize` bytes for each output. */
  readonly stores: number;
  readonly storeSize: number;
  /** For each board of a block eight bytes, not zero where an output that decides failed. */
  readonly failed: number;
  /** Columns of inputs that never change, and their value. */
  readonly held: readonly (readonly [column: number, value: number])[];
}

export interface Machine {
  readonly module: WebAssembly.Module;
  readonly layout: Layout;
}

/** What a machine can be told to do. */
export interface MachineExports {
  readonly memory: WebAssembly.Memory;
  /** Draws the block of boards from `first` on. */
  draw(first: number): void;
  /** Computes the outputs of the block that was drawn. */
  compute(): void;
  /** Counts the first `boards` of the block. @returns whether an output that decides failed on any */
  count(boards: number): number;
  /** Counts doubles from an address on, so many bytes of them, into the tally at another. */
  tally(from: number, bytes: number, tally: number): number;
}

/** Boards in a block: inputs and outputs of one stay in the processor's cache. A multiple of 8 that divides `chunk`. */
const usualBlock = 512;
/** Values kept of an output before they are taken out of the machine; at least a block. */
const storeValues = 2048;

/**
 * The whole simulation of some outputs as one WebAssembly module: draws, equations and counting.
 * Columns stand 64 bytes further apart than they are long: at whole multiples of 4096 bytes they would all fall on the
 * same few lines of the cache, which takes three times as long.
 */
export function machineFor(boards: Boards, block = usualBlock): Machine {
  const { tape, outputs, laws, decides } = boards;
  const module = new ModuleBuilder([farAngle, emptied]);
  const stride = 8 * block + 64;
  const column = (): number => module.reserve(stride);
  const inputs = new Map([...laws.keys()].map((i) => [i, column()]));
  const columns = module.reserve(stride * outputs.length);
  const failed = module.reserve(8 * block);
  const tallies = module.reserve(tallyLayout.size * outputs.length);
  const table = module.data(new Uint8Array(normalTable.buffer));
  const draws = new Draws({ block, table, bases: module.reserve(4 * block), words: module.reserve(4 * block) });
  module.export('draw', {
    parameters: ['i32'],
    write(code) {
      code.do(draws.bases(parameter(0)));
      for (const [i, law] of laws) if (law.kind !== 'held') code.do(draws.fill(law, inputs.get(i)!));
    },
  });
  const places = {
    bytes: 8 * block,
    input: (i: number) => inputs.get(i)!,
    output: (k: number) => columns + stride * k,
    carried: column,
  };
  module.export('compute', { parameters: [], write: (code) => code.do(tapeCode(tape, outputs, places)) });
  const deciding = module.data(Uint8Array.from(decides, Number));
  module.export('count', countFunction({ outputs: outputs.length, columns, stride, tallies, deciding, failed }));
  module.export('tally', tally);
  const storeSize = 8 * Math.max(storeValues, block);
  const layout: Layout = {
    block,
    outputs: outputs.length,
    columns,
    stride,
    tallies,
    stores: module.reserve(storeSize * outputs.length + 64),
    storeSize,
    failed,
    held: [...laws].flatMap(([i, law]) => (law.kind === 'held' ? [[inputs.get(i)!, law.value] as const] : [])),
  };
  return { module: new WebAssembly.Module(module.finish()), layout };
}
