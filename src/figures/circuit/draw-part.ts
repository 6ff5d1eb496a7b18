import type { Place } from '../../spec/drawing/drawing.ts';
import { type Frame, frameOf } from '../../spec/drawing/frame.ts';
import type { KindName } from '../../spec/drawing/kinds.ts';
import { amplifier } from './amplifier.ts';
import { box, copper, laminate, solid } from './area.ts';
import { currentArrow, flowArrow } from './arrow.ts';
import { battery } from './battery.ts';
import { capacitor } from './capacitor.ts';
import { connector } from './connector.ts';
import { crystal } from './crystal.ts';
import { currentSource } from './current-source.ts';
import { diode } from './diode.ts';
import { electrolytic } from './electrolytic.ts';
import { fuse } from './fuse.ts';
import { ground } from './ground.ts';
import { inductor } from './inductor.ts';
import { led } from './led.ts';
import { makeContact } from './make-contact.ts';
import { mosfet } from './mosfet.ts';
import { motor } from './motor.ts';
import { round } from './pen.ts';
import { resistor } from './resistor.ts';
import { shunt } from './shunt.ts';
import { span } from './span.ts';
import { supply } from './supply.ts';
import { terminal } from './terminal.ts';
import { thermistor } from './thermistor.ts';
import { voltageSource } from './voltage-source.ts';
import { zener } from './zener.ts';

/** Pixels of a module. */
export const module = 10;

const twoEnded: Partial<Record<KindName, (length: number) => string>> = {
  resistor,
  capacitor,
  electrolytic,
  inductor,
  diode,
  zener,
  led,
  battery,
  fuse,
  switch: makeContact,
  connector,
  crystal,
  thermistor,
  rtd: thermistor,
  'current-source': currentSource,
  'voltage-source': voltageSource,
  current: currentArrow,
  flow: flowArrow,
  span,
};
const pointed: Partial<Record<KindName, () => string>> = { ground, supply, terminal };
const areas: Partial<Record<KindName, typeof box>> = { box, copper, laminate, solid };

/** SVG of one part of a drawing, its places in modules; labels are not part of it. */
export function drawPart(kind: KindName, places: readonly Place[], heavy: boolean): string {
  const shape = shapeOf(kind, places);
  return heavy ? `<g class="drawn-heavy">${shape}</g>` : shape;
}

function shapeOf(kind: KindName, places: readonly Place[]): string {
  const [a, b, c, d] = places as [Place, Place, Place, Place];
  const single = pointed[kind];
  if (single) return moved(a, single());
  const ended = twoEnded[kind];
  if (ended) return turned(frameOf(a, b), ended(distance(a, b)));
  const area = areas[kind];
  if (area) {
    const [x, y] = [Math.min(a[0], b[0]), Math.min(a[1], b[1])];
    return area(x * module, y * module, Math.abs(b[0] - a[0]) * module, Math.abs(b[1] - a[1]) * module);
  }
  switch (kind) {
    case 'mosfet':
      return turned(frameOf(a, b, c), mosfet(distance(a, b), away(frameOf(a, b, c), c)));
    case 'shunt': {
      const frame = frameOf(a, b, c);
      return turned(frame, shunt(distance(a, b), away(frame, c), away(frame, d)));
    }
    case 'amplifier':
      return moved(c, amplifierToward(a, b, c)) + (d ? path('wire', [d, onSlope(a, b, c, d)]) : '');
    case 'motor':
      return moved(b, motor());
    case 'round':
      return moved(a, `<circle class="drawn-copper" r="${round(Math.hypot(b[0] - a[0], b[1] - a[1]) * module)}"/>`);
    case 'wire':
    case 'power':
      return path('wire', places);
    case 'trace':
      return path('trace', places);
    case 'guide':
      return path('guide', places);
    default:
      return '';
  }
}

function amplifierToward(plus: Place, minus: Place, out: Place): string {
  const length = (out[0] - plus[0]) * module;
  const shape = amplifier(Math.abs(length), (out[1] - plus[1]) * module, (out[1] - minus[1]) * module);
  return length < 0 ? `<g transform="scale(-1 1)">${shape}</g>` : shape;
}

/** Where the lead of a reference meets the slope of the triangle. */
function onSlope(plus: Place, minus: Place, out: Place, [x, y]: Place): Place {
  const way = Math.sign(out[0] - plus[0]);
  const [base, apex] = [plus[0] + way, out[0] - way];
  const half = Math.abs(plus[1] - minus[1]) / 2 + 1;
  return [x, out[1] + Math.sign(y - out[1]) * half * ((apex - x) / (apex - base))];
}

const moved = ([x, y]: Place, shape: string): string =>
  `<g transform="translate(${round(x * module)} ${round(y * module)})">${shape}</g>`;

/** A symbol's own drawing has the side on which it reaches out above its axis. */
function turned({ middle, along, across }: Frame, shape: string): string {
  const numbers = [along[0], along[1], -across[0], -across[1], middle[0] * module, middle[1] * module].map(
    (n) => round(n) + 0,
  );
  return `<g transform="matrix(${numbers.join(' ')})">${shape}</g>`;
}

const distance = (a: Place, b: Place): number => (Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1])) * module;

/** How far a place lies from the axis, on the side where the symbol reaches out. */
const away = ({ middle, across }: Frame, [x, y]: Place): number =>
  ((x - middle[0]) * across[0] + (y - middle[1]) * across[1]) * module;

const path = (kind: string, places: readonly Place[]): string =>
  `<path class="drawn-${kind}" d="M${places.map(([x, y]) => `${x * module} ${y * module}`).join('L')}"/>`;
