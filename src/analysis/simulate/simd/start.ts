import { reducedAngle } from '../../../expression/wasm/functions/angle.ts';
import type { Machine, MachineExports } from './machine.ts';

/**
 * Starts a machine, in a memory of its own. @param emptied  told the address of a tally whose store of kept values is
 * full
 */
export function started({ module, layout }: Machine, emptied: (tally: number) => void): MachineExports {
  let view: DataView | undefined;
  const farAngle = (x: number, address: number): void => {
    const { high, low, quadrant } = reducedAngle(x);
    view!.setFloat64(address, high, true);
    view!.setFloat64(address + 8, low, true);
    view!.setBigInt64(address + 16, BigInt(quadrant), true);
  };
  const instance = new WebAssembly.Instance(module, { host: { farAngle, emptied } });
  const exports = instance.exports as unknown as MachineExports;
  const { buffer } = exports.memory;
  view = new DataView(buffer);
  for (const [column, value] of layout.held) new Float64Array(buffer, column, layout.block).fill(value);
  return exports;
}

/** The smallest module that needs SIMD: a function that makes a vector and drops it. */
const smallest = [
  [0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0],
  [1, 4, 1, 0x60, 0, 0],
  [3, 2, 1, 0],
  [10, 9, 1, 7, 0, 0x41, 0, 0xfd, 15, 0x1a, 0x0b],
].flat();

/** Whether this platform runs WebAssembly with SIMD. */
export const hasSimd = (): boolean =>
  typeof WebAssembly === 'object' && WebAssembly.validate(Uint8Array.from(smallest));
