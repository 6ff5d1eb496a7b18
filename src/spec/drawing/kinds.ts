import type { Box, Place } from './drawing.ts';
import { boxAround, boxIn, frameOf } from './frame.ts';

/** What a drawing may hold: the names of the places a line gives, and what of the grid it covers. */
export interface Kind {
  /** In the order in which they are typed; the last repeats where `many`. */
  readonly places: readonly string[];
  readonly many?: boolean;
  /** How many of the last places may be left out. */
  readonly optional?: number;
  /** `ends` must meet something; `line` conducts from place to place; `mark` explains and touches nothing. */
  readonly role: 'ends' | 'line' | 'mark' | 'pin';
  /** Places lie on one line of the grid, this many modules apart at least. */
  readonly straight?: number;
  /** What is wrong with where its places lie to each other, in words. */
  readonly wrong?: (places: readonly Place[]) => string | undefined;
  /** What it covers: no other symbol, wire or label may stand there. */
  readonly body?: (places: readonly Place[]) => Box;
}

/** Two ends with the symbol in the middle between them, `length` long, reaching `left` and `right` of its axis. */
function between(names: string, length: number, left: number, right = left): Kind {
  return {
    places: names.split(', '),
    role: 'ends',
    straight: Math.ceil(length + 0.5),
    body: ([a, b]) => boxIn(frameOf(a!, b!), -length / 2, -right, length / 2, left),
  };
}

/** One end from which a short symbol hangs, or stands. */
const hanging = (name: string, top: number, bottom: number): Kind => ({
  places: [name],
  role: 'ends',
  body: ([[x, y] = [0, 0]]) => ({ left: x - 0.9, right: x + 0.9, top: y + top, bottom: y + bottom }),
});

const twoEnds = 'one end, other end';
const line = { places: ['start', 'next'], many: true, role: 'line' } as const;
const mark = (places: string, more: Partial<Kind> = {}): Kind => ({
  places: places.split(', '),
  role: 'mark',
  ...more,
});
const rectangle = { places: ['corner', 'opposite corner'], body: boxAround } as const;

export const kinds = {
  resistor: between(twoEnds, 3, 0.5),
  capacitor: between(twoEnds, 0.5, 1),
  electrolytic: between('positive, negative', 0.5, 1.2, 1),
  inductor: between(twoEnds, 3.2, 0.5, 0.1),
  diode: between('anode, cathode', 1.2, 0.7),
  zener: between('anode, cathode', 1.2, 0.8),
  led: between('anode, cathode', 1.2, 1.9, 0.7),
  battery: between('positive, negative', 1.5, 1),
  fuse: between(twoEnds, 3, 0.5),
  switch: between(twoEnds, 2.2, 1, 0.2),
  connector: between('socket, plug', 1.6, 0.4),
  crystal: between(twoEnds, 1.3, 1),
  thermistor: between(twoEnds, 3, 1, 1),
  rtd: between(twoEnds, 3, 1, 1),
  'current-source': between('from, to', 2, 1),
  'voltage-source': between('positive, negative', 2, 1),
  mosfet: {
    places: ['drain', 'source', 'gate'],
    role: 'ends',
    straight: 4,
    wrong: ([d, s, g]) => beside(d!, s!, g!, 2),
    body: ([d, s, g]) => boxIn(frameOf(d!, s!, g), -1.3, -1.8, 1.3, 1.5),
  },
  shunt: {
    places: ['top', 'bottom', 'sense at the top', 'sense at the bottom'],
    role: 'ends',
    straight: 4,
    wrong: ([a, b, c, d]) => besideShunt(a!, b!, c!, d!),
    body: ([a, b, c]) => boxIn(frameOf(a!, b!, c), -1.5, -0.5, 1.5, 0.6),
  },
  amplifier: {
    places: ['plus input', 'minus input', 'output', 'reference'],
    optional: 1,
    role: 'ends',
    wrong: triangular,
    body: triangle,
  },
  motor: {
    places: ['first phase', 'second phase', 'third phase'],
    role: 'ends',
    wrong: ([a, b, c]) =>
      a![0] === b![0] && b![0] === c![0] && b![1] - a![1] === 2 && c![1] - b![1] === 2
        ? undefined
        : 'phases that are not two modules below each other',
    body: ([, [x, y] = [0, 0]]) => ({ left: x + 1, right: x + 6, top: y - 2.5, bottom: y + 2.5 }),
  },
  box: { ...rectangle, role: 'mark' },
  pin: { places: ['place on the edge of a box'], role: 'pin' },
  terminal: { places: ['end of a wire'], role: 'ends' },
  ground: hanging('end of a wire', 0.3, 1),
  supply: hanging('end of a wire', -1.2, -0.3),
  wire: line,
  power: line,
  current: mark('from, to', { straight: 1 }),
  flow: mark('from, to', { straight: 1 }),
  span: mark('from, to', { straight: 1 }),
  guide: mark('from, to', { straight: 1 }),
  trace: mark('start, next', { many: true }),
  note: mark('middle'),
  copper: { ...rectangle, role: 'mark' },
  laminate: { ...rectangle, role: 'mark' },
  round: mark('middle, place on the edge', { body: disc }),
  solid: { ...rectangle, role: 'mark' },
} as const satisfies Record<string, Kind>;
export type KindName = keyof typeof kinds;

/** The table with every key of its entries readable. */
export const kindOf = (name: KindName): Kind => kinds[name];

/** A gate lies level with the middle between drain and source, and to the side. */
function beside(first: Place, second: Place, third: Place, least: number): string | undefined {
  const { middle, along, across } = frameOf(first, second, third);
  const [dx, dy] = [third[0] - middle[0], third[1] - middle[1]];
  const level = dx * along[0] + dy * along[1];
  return level === 0 && dx * across[0] + dy * across[1] >= least
    ? undefined
    : `a gate that is not beside the middle of drain and source, ${least} modules away or more`;
}

function besideShunt(top: Place, bottom: Place, first: Place, second: Place): string | undefined {
  const { middle, along, across } = frameOf(top, bottom, first);
  const seen = [first, second].map(([x, y]) => {
    const [dx, dy] = [x - middle[0], y - middle[1]];
    return { level: dx * along[0] + dy * along[1], away: dx * across[0] + dy * across[1] };
  });
  return seen[0]!.level === -1 && seen[1]!.level === 1 && seen.every(({ away }) => away >= 1)
    ? undefined
    : 'sense ends that are not one module above and below the middle of the shunt, on one side';
}

function triangular([plus, minus, out, reference]: readonly Place[]): string | undefined {
  if (plus![0] !== minus![0] || Math.abs(plus![1] - minus![1]) < 2)
    return 'inputs that are not two modules apart or more';
  if (out![1] * 2 !== plus![1] + minus![1]) return 'an output that is not level with the middle of the inputs';
  if (Math.abs(out![0] - plus![0]) < 5) return 'an output less than five modules from the inputs';
  if (!reference) return undefined;
  const { left, right, top, bottom } = triangle([plus!, minus!, out!]);
  const [x, y] = reference;
  return x > left && x < right && (y >= bottom || y <= top)
    ? undefined
    : 'a reference that is not below or above the triangle';
}

function triangle([plus, minus, out]: readonly Place[]): Box {
  const way = Math.sign(out![0] - plus![0]);
  const half = Math.abs(plus![1] - minus![1]) / 2 + 1;
  return boxAround([
    [plus![0] + way, out![1] - half],
    [out![0] - way, out![1] + half],
  ]);
}

function disc([[x, y] = [0, 0], [ex, ey] = [0, 0]]: readonly Place[]): Box {
  const r = Math.hypot(ex - x, ey - y);
  return { left: x - r, right: x + r, top: y - r, bottom: y + r };
}
