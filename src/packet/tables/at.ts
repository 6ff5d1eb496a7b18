import type { Corner } from '../../analysis/findings.ts';

/** A corner in one cell: `I_ph=70; pack.V_cell=3`, each in the unit that inputs.csv states for it. */
export const cornerCell = (corner: Corner): string =>
  Object.entries(corner)
    .map(([id, value]) => `${id}=${value}`)
    .join('; ');
