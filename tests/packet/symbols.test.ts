import { expect, test } from 'vitest';
import { idTex } from '../../src/packet/symbols.ts';

test.each([
  ['clamp.V_RWM', 'V_{\\mathrm{RWM}}'],
  ['clamp.V_BR_C', 'V_{\\mathrm{BR}'],
  ['dc_link.ESR_1', '\\mathrm{ESR}_{1}'],
  ['pack.dV_sag', '\\Delta V_{\\mathrm{sag}}'],
])('%s is a symbol with an index', (id, tex) => {
  expect(idTex(id).startsWith(tex), idTex(id)).toBe(true);
});

test.each(['trip.TRIP_A', 'sense.V_PER_COUNT', 'dead.DEAD_TIME_S'])('%s is a name of firmware', (id) => {
  expect(idTex(id)).toBe(`\\mathrm{${id.split('.')[1]!.replaceAll('_', '\\_')}}`);
});
