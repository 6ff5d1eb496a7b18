import type { Drawing } from '../../packet/drawing.ts';
import { drawPart, module } from '../circuit/draw-part.ts';
import { junction } from '../circuit/junction.ts';
import { escapeXml } from '../escape.ts';
import { labelSvg } from './label.ts';
import { layOut } from './lay-out.ts';

/** Room round the outermost stroke, pixels. */
const edge = 3;
/** Areas lie under everything else. */
const under: ReadonlySet<string> = new Set(['laminate', 'copper', 'solid', 'box']);

/**
 * A circuit as SVG, ten pixels to a module at the size of the lettering on paper. Colours are the page's, so one drawing serves
 * paper, light and dark.
 */
export function drawingSvg(drawing: Drawing): string {
  const { parts, alt, id } = drawing;
  const { labels, dots, frame } = layOut(drawing);
  const [x, y] = [Math.floor(frame.left - edge), Math.floor(frame.top - edge)];
  const [width, height] = [Math.ceil(frame.right + edge) - x, Math.ceil(frame.bottom + edge) - y];
  const sorted = [
    ...parts.filter(({ symbol }) => under.has(symbol)),
    ...parts.filter(({ symbol }) => !under.has(symbol)),
  ];
  // Rings lie on the wires that end in them.
  const shapes = sorted.toSorted((a, b) => Number(a.symbol === 'terminal') - Number(b.symbol === 'terminal'));
  const body = [
    ...shapes.map(({ symbol, places, heavy }) => drawPart(symbol, places, heavy)),
    ...dots.map(
      ({ place, heavy }) =>
        `<g transform="translate(${place[0] * module} ${place[1] * module})">${junction(heavy)}</g>`,
    ),
    ...labels.map(({ lines, box, anchor }) => labelSvg(lines, anchorAt(box, anchor), box.top, anchor)),
  ];
  return `<svg class="drawn" id="${escapeXml(id)}-svg" role="img" aria-label="${escapeXml(alt)}" viewBox="${x} ${y} ${width} ${height}" style="--drawn:${width}">${body.join('')}</svg>`;
}

const anchorAt = ({ left, right }: { left: number; right: number }, anchor: 'start' | 'middle' | 'end'): number =>
  anchor === 'start' ? left : anchor === 'end' ? right : (left + right) / 2;
