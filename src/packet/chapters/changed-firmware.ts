import type { Row, Table } from '../block.ts';
import type { Reviewed } from '../by-id.ts';
import { type Constant, constantsOf } from '../constants.ts';
import { figureText, fixed, plainTyped, toSi, typedUnitFor } from '../figures.ts';
import { dash, link, name } from '../inline.ts';
import type { Section } from '../packet.ts';
import type { Review } from '../review.ts';
import type { Text } from '../text.ts';
import { section } from './chapter.ts';
import { decimal, sans, serif } from './columns.ts';

/** Constants that firmware must be built with again: whatever differs in the tenth digit. */
export function changedConstants(review: Review, previous: Reviewed): readonly ConstantChange[] {
  const before = new Map(constantsOf(previous.board, previous.findings).map((one) => [one.id, one]));
  const after = new Map(constantsOf(review.board, review.findings).map((one) => [one.id, one]));
  const kept = [...after.values()].flatMap((now): ConstantChange[] => {
    const then = before.get(now.id);
    if (!then) return [{ now }];
    return differs(then, now) ? [{ then, now }] : [];
  });
  const gone = [...before.values()].filter(({ id }) => !after.has(id)).map((then): ConstantChange => ({ then }));
  return [...kept, ...gone];
}
export interface ConstantChange {
  readonly then?: Constant;
  readonly now?: Constant;
}

const differs = (a: Constant, b: Constant): boolean =>
  a.unit !== b.unit ||
  a.name !== b.name ||
  Math.abs(a.value - b.value) > 1e-10 * Math.max(Math.abs(a.value), Math.abs(b.value));

export function changedFirmware(review: Review, previous: Reviewed, number: () => string): Section | undefined {
  const changes = changedConstants(review, previous);
  if (!changes.length) return undefined;
  const units = new Map(
    [...previous.board.circuits, ...review.board.circuits].flatMap(({ firmware }) =>
      firmware.map(({ id, unit }) => [id, unit] as const),
    ),
  );
  const valueText = (constant: Constant | undefined, none: string): Text => {
    if (!constant) return [none];
    const unit = units.get(constant.id)!;
    const si = toSi(constant.value, unit);
    return [figureText(plainTyped(si, typedUnitFor([si], unit), 6))];
  };
  const row = ({ then, now }: ConstantChange): Row => ({
    cells: [
      [now ? link(now.name, now.id) : name(then!.name)],
      valueText(then, 'not there'),
      valueText(now, 'gone'),
      then && now && then.value !== 0 ? { number: moved(now.value / then.value - 1) } : dash,
      [(now ?? then)!.says || '–'],
    ],
  });
  const table: Table = {
    kind: 'table',
    id: 'changed-constants',
    number: number(),
    caption: ['Firmware constants that differ: firmware is to be built with the new header.'],
    columns: [
      sans('Constant'),
      serif(`Revision ${previous.board.identity.mark}`),
      serif(`Revision ${review.board.identity.mark}`),
      decimal('Moved, %'),
      serif('What it is'),
    ],
    groups: [{ rows: changes.map(row) }],
    wide: true,
  };
  return section('changes', 5, 'firmware', 'Firmware constants', [table]);
}

const moved = (share: number): string => `${share > 0 ? '+' : ''}${fixed(share * 100, 1)}`;
