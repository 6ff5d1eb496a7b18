import { expect, test } from 'vitest';
import { layOut } from '../../src/figures/drawing/lay-out.ts';
import { packetFrom } from './packets.ts';
import { blocksOf, rowsOf, tableNamed } from './walk.ts';

const way = `conditions:
  I: 1 A to 5 A typ 2 A
circuits:
  bridge:
    title: Switches
    given: { I_ph: I, R: 10 mohm ±10 % }
    equations: { P: { is: I_ph^2 * R, unit: W, says: Heat, source: Joule's law, heat: true } }
    path: { station: bridge, current: I_ph, heat: P }
  lead:
    title: Lead
    count: 2
    given: { I_pack: 2 * I, T: 20 degC to 40 degC typ 25 degC }
    equations: { Q: { is: I_pack * 1 s, unit: C, says: Charge, source: definition } }
    path: { station: leads, current: I_pack, temperature: T }
`;

test('the current passes its stations from the pack to the motor, whatever the order of the file', () => {
  const packet = packetFrom(way);
  const rows = rowsOf(tableNamed(packet, 'current-path'));
  expect(rows).toHaveLength(2);
  // What follows from others has a typical value alone; a condition and a result have their worst.
  expect(rows[0]).toBe('lead | Lead | × 2 | I_pack | 4 A | – | – | – | – | T | 25 °C | 40 °C');
  expect(rows[1]).toBe('bridge | Switches | – | I_ph | 2 A | 5 A | P | 40 mW | 275 mW | – | – | –');
});

test('and the same is drawn, labels clear of lines', () => {
  const drawing = blocksOf(packetFrom(way)).find((block) => block.kind === 'drawing' && block.id === 'drawing-path');
  if (drawing?.kind !== 'drawing') throw new Error('no drawing');
  expect(drawing.parts.map(({ symbol }) => symbol)).toEqual(['box', 'box', 'power']);
  expect(layOut(drawing).crowded).toBe(0);
  expect(drawing.alt).toContain('lead, then bridge');
});

test('a board with one station has no such section', () => {
  const one = way.replace(/ {4}path: \{ station: leads.*\n/, '');
  expect(blocksOf(packetFrom(one)).some((block) => 'id' in block && block.id === 'drawing-path')).toBe(false);
});
