import { loop, type Statement } from '../../../src/expression/wasm/code.ts';
import { type Argument, ColumnFunctions } from '../../../src/expression/wasm/columns.ts';
import { reducedAngle } from '../../../src/expression/wasm/functions/angle.ts';
import type { Elementary } from '../../../src/expression/wasm/functions/elementary.ts';
import { farAngle } from '../../../src/expression/wasm/functions/turn.ts';
import { load, store } from '../../../src/expression/wasm/memory.ts';
import { ModuleBuilder } from '../../../src/expression/wasm/module.ts';
import { integer } from '../../../src/expression/wasm/vectors.ts';

/** Starts a module that may ask for far angles. */
export function start(module: ModuleBuilder): { memory: ArrayBuffer; run: () => void } {
  let view: DataView | undefined;
  const host = {
    farAngle: (x: number, at: number): void => {
      const { high, low, quadrant } = reducedAngle(x);
      view!.setFloat64(at, high, true);
      view!.setFloat64(at + 8, low, true);
      view!.setBigInt64(at + 16, BigInt(quadrant), true);
    },
  };
  const { exports } = new WebAssembly.Instance(new WebAssembly.Module(module.finish()), { host });
  const { memory, run } = exports as unknown as { memory: WebAssembly.Memory; run: () => void };
  view = new DataView(memory.buffer);
  return { memory: memory.buffer, run };
}

const length = 64;
const bytes = 8 * length;

/** The function for each row of arguments, by its loop over columns. */
export function overColumns(f: Elementary, rows: readonly (readonly number[])[]): number[] {
  return inBlocks(rows, (places, result) => {
    const args = places.map((column): Argument => ({ column }));
    return new ColumnFunctions(bytes).apply(f, args, result);
  });
}

/** The same by calls, a pair at a time. */
export function byCalls(f: Elementary, rows: readonly (readonly number[])[]): number[] {
  return inBlocks(rows, (places, result) => (code) => {
    code.do(
      loop(integer(0), integer(bytes), 16, (at) => {
        const args = places.map((place) => code.let(load(at, place)));
        store(at, f.write(code, args), result)(code);
      }),
    );
  });
}

function inBlocks(
  rows: readonly (readonly number[])[],
  body: (places: readonly number[], result: number) => Statement,
): number[] {
  const module = new ModuleBuilder([farAngle]);
  const places = rows[0]!.map(() => module.reserve(bytes));
  const result = module.reserve(bytes);
  module.export('run', { parameters: [], write: (code) => code.do(body(places, result)) });
  const { memory, run } = start(module);
  const columns = places.map((place) => new Float64Array(memory, place, length));
  const results = new Float64Array(memory, result, length);
  const out: number[] = [];
  for (let first = 0; first < rows.length; first += length) {
    const some = rows.slice(first, first + length);
    columns.forEach((column, k) => {
      column.fill(1);
      some.forEach((row, i) => {
        column[i] = row[k]!;
      });
    });
    run();
    out.push(...results.subarray(0, some.length));
  }
  return out;
}
