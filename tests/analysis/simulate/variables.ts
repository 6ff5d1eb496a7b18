import type { Draw, Variable } from '../../../src/analysis/variable.ts';

/** A part that varies; only what simulation reads. */
export const part = (id: string, draw: Draw, [min, typ, max]: readonly [number, number, number]): Variable => ({
  id,
  role: 'part',
  what: 'value',
  min,
  typ,
  max,
  draw,
  instance: 1,
  input: {} as Variable['input'],
});
