import { expect, test } from 'vitest';
import { labelSize } from '../../src/figures/drawing/label.ts';
import { exchangeSvg } from '../../src/figures/exchange-svg.ts';
import { boardBlocks } from '../../src/packet/chapters/board-blocks.ts';
import { numbering } from '../../src/packet/numbering.ts';
import { referencesOf } from '../../src/packet/references.ts';
import { reviewOf } from '../../src/packet/review.ts';
import { reviewed } from './packets.ts';

const chain = `conditions:
  I: 1 A to 5 A typ 2 A
circuits:
  pack:
    given: { V: 36 V, R: 10 mohm }
    equations: { V_load: { is: V - I * R, unit: V, says: Loaded, source: Ohm's law } }
  lamp:
    given: { V_s: pack.V_load, R: 100 ohm }
    equations: { I_l: { is: V_s / R, unit: A, says: Current, source: Ohm's law } }
    checks: { low: { holds: I_l <= pack.V / 90 ohm, because: it burns } }
  fuse:
    given: { I_F: 1 A }
    checks: { carries: { holds: lamp.I_l <= I_F, because: it opens } }
`;
const { board, findings } = reviewed(chain);

test('references are what inputs, equations and checks use of other circuits', () => {
  expect(referencesOf(board)).toEqual([
    { from: 'pack', to: 'lamp', quantity: 'pack.V_load' },
    { from: 'pack', to: 'lamp', quantity: 'pack.V' },
    { from: 'lamp', to: 'fuse', quantity: 'lamp.I_l' },
  ]);
});

test('blocks stand in a row and hand each other what is referred to', () => {
  const [figure, table] = boardBlocks(reviewOf({ board, findings }, {}), numbering(7));
  if (figure?.kind !== 'exchange' || table?.kind !== 'table') throw new Error('no figure, no table');
  expect(figure.blocks).toEqual([['pack'], ['lamp'], ['fuse']]);
  const given = figure.given.map(({ from, to, lines }) => [
    from,
    to,
    lines.map((line) => line.map(({ text }) => text).join('_')),
  ]);
  expect(given).toEqual([
    [0, 1, ['V_load', 'V']],
    [1, 2, ['I_l']],
  ]);
  expect(figure.alt).toContain('pack gives lamp pack.V_load, pack.V');
  expect(table.groups[0]!.rows).toHaveLength(2);
  // A cell of twelve blocks, the most there are, is 54 px wide.
  for (const { lines } of figure.given) expect(labelSize(lines).width).toBeLessThan(54);
  expect(exchangeSvg(figure).match(/class="drawn-block"/g)).toHaveLength(3);
});

test('a board whose circuits stand alone has no such figure', () => {
  const alone = reviewed(
    'circuits: { a: { given: { R: 1 ohm }, equations: { R_2: { is: 2 * R, unit: ohm, says: Twice, source: own } } } }\n',
  );
  expect(boardBlocks(reviewOf(alone, {}), numbering(7))).toEqual([]);
});
