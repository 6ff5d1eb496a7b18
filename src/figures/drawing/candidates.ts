import type { DrawingPart } from '../../packet/drawing.ts';
import type { Box, Side } from '../../spec/drawing/drawing.ts';
import { boxAround } from '../../spec/drawing/frame.ts';
import { kindOf } from '../../spec/drawing/kinds.ts';
import type { Size } from './label.ts';
import { around, pixels } from './obstacles.ts';

/** A place for a label: its box, the edge its lines are flush with, and how unwelcome it is. */
export interface Candidate {
  readonly box: Box;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly cost: number;
}

/** Every place tried for the label of a part, in pixels. */
export function candidatesFor(part: DrawingPart, size: Size): Candidate[] {
  switch (part.symbol) {
    case 'note':
      return [centred(part, size)];
    case 'pin':
      throw new Error('A pin is labelled by the edge of its box.');
    case 'box':
    case 'laminate':
    case 'solid':
      return [...inside(part, size), ...beside(part, size)];
    default:
      return beside(part, size);
  }
}

function centred({ places }: DrawingPart, { width, height }: Size): Candidate {
  const { left, top } = around(places[0]!, 0);
  return { box: boxAt(left - width / 2, top - height / 2, { width, height }), anchor: 'middle', cost: 0 };
}

/** In the middle of an area, or higher or lower in it. */
function inside({ places }: DrawingPart, { width, height }: Size): Candidate[] {
  const { left, top, right, bottom } = pixels(boxAround(places));
  if (right - left < width + 4 || bottom - top < height + 4) return [];
  const slack = (bottom - top - height - 4) / 2;
  const aside = (right - left - width - 4) / 2;
  const middle = (left + right) / 2 - width / 2;
  return [0, -1, 1, -0.5, 0.5].flatMap((share) =>
    [0, -1, 1, -0.5, 0.5].map((shift) => ({
      box: boxAt(middle + shift * aside, (top + bottom) / 2 - height / 2 + share * slack, { width, height }),
      anchor: 'middle' as const,
      cost: Math.abs(share) * 0.5 + Math.abs(shift) * 0.6 - 2,
    })),
  );
}

const gaps = [4, 9, 15, 22];

/** Right, left, above and below what it belongs to, centred, then shifted along its side. */
function beside(part: DrawingPart, size: Size): Candidate[] {
  const target = targetOf(part);
  const costs = sideCosts(part);
  return (['right', 'left', 'above', 'below'] as const).flatMap((side) =>
    gaps.flatMap((gap, step) =>
      shifts(side, target, size).map(({ shift, cost }) => ({
        ...placed(side, target, size, gap, shift),
        cost: costs[side] + step * 1.2 + cost,
      })),
    ),
  );
}

function placed(side: Side, target: Box, size: Size, gap: number, shift: number): Omit<Candidate, 'cost'> {
  const { width, height } = size;
  const [x, y] = [(target.left + target.right) / 2, (target.top + target.bottom) / 2];
  switch (side) {
    case 'right':
      return { box: boxAt(target.right + gap, y - height / 2 + shift, size), anchor: 'start' };
    case 'left':
      return { box: boxAt(target.left - gap - width, y - height / 2 + shift, size), anchor: 'end' };
    case 'above':
      return { box: boxAt(x - width / 2 + shift, target.top - gap + 1 - height, size), anchor: anchorFor(shift) };
    case 'below':
      return { box: boxAt(x - width / 2 + shift, target.bottom + gap - 1, size), anchor: anchorFor(shift) };
  }
}

/** Lines of a label that stands to one side of its part are flush with it. */
const anchorFor = (shift: number): Candidate['anchor'] => (shift > 0 ? 'start' : shift < 0 ? 'end' : 'middle');

function shifts(side: Side, target: Box, { width, height }: Size): { shift: number; cost: number }[] {
  const upright = side === 'left' || side === 'right';
  const reach = upright ? (target.bottom - target.top + height) / 2 : (target.right - target.left + width) / 2;
  // Flush with the part's own edge, for a terminal above or below its wire.
  const flush = upright ? [] : [(width - (target.right - target.left)) / 2];
  const steps = [0, 5, 10, 15, 20, 26, 32, 40, 50, ...flush].filter((shift) => shift <= reach);
  return steps.flatMap((shift) =>
    (shift === 0 ? [0] : [shift, -shift]).map((signed) => ({
      shift: signed,
      cost: Math.abs(signed) * (upright ? 0.04 : 0.02),
    })),
  );
}

const boxAt = (left: number, top: number, { width, height }: Size): Box => ({
  left,
  top,
  right: left + width,
  bottom: top + height,
});

/** What the label stands beside. */
function targetOf({ symbol, places }: DrawingPart): Box {
  const { body, role } = kindOf(symbol);
  if (symbol === 'terminal') return around(places[0]!, 3);
  if (symbol === 'current' || symbol === 'flow') return flat(boxAround(places), symbol === 'flow' ? 3 : 5);
  if (symbol === 'trace') return around(places[0]!, 3);
  if (role === 'line') return flat(boxAround(places.slice(0, 2)), 1.6);
  return body ? pixels(body(places)) : flat(boxAround(places), 2);
}

function flat(box: Box, half: number): Box {
  const { left, top, right, bottom } = pixels(box);
  return { left: left - half, top: top - half, right: right + half, bottom: bottom + half };
}

/** How unwelcome each side is: values stand right of upright symbols and below lying ones, nets over their wire. */
function sideCosts({ symbol, places, side }: DrawingPart): Record<Side, number> {
  const [a, b] = places;
  const lies = b !== undefined && a![1] === b[1];
  const costs: Record<Side, number> =
    symbol === 'terminal'
      ? { above: 0, below: 1, left: 2, right: 2 }
      : symbol === 'supply'
        ? { above: 0, right: 1, left: 1, below: 9 }
        : symbol === 'trace'
          ? { left: 0, above: 1, below: 1, right: 5 }
          : symbol === 'span' || symbol === 'current' || symbol === 'flow'
            ? lies
              ? { above: 0, below: 0.6, left: 3, right: 3 }
              : { right: 0, left: 0.6, above: 3, below: 3 }
            : lies
              ? { below: 0, above: 0.4, left: 4, right: 4 }
              : { right: 0, left: 0.4, above: 4, below: 4 };
  return side ? { ...costs, [side]: -6 } : costs;
}
