import type { Exchange } from '../packet/exchange.ts';
import { arrowHead } from './circuit/pen.ts';
import { labelSize, labelSvg, lettering } from './drawing/label.ts';
import { escapeXml } from './escape.ts';

/** Pixels of the whole, which is the width of text block and margin column on paper. */
const width = 650;
const gap = 4;

/** Rows are as high as the fullest cell of three lines. */
const height = 3 * lettering.line + 8;

/** Blocks on the diagonal with what they hand each other, as SVG; see `Exchange`. */
export function exchangeSvg({ blocks, given, alt, id }: Exchange): string {
  const step = width / blocks.length;
  const middle = (index: number) => index * step + step / 2;
  const level = (index: number) => index * (height + gap) + height / 2;
  const lines = given.map(({ from, to }) => {
    const [x, y] = [middle(to), level(from)];
    const onward = to > from;
    const start = middle(from) + (onward ? 1 : -1) * (step / 2 - gap);
    const end = level(to) + (to > from ? -1 : 1) * (height / 2);
    const head = arrowHead(x, end, [0, onward ? 1 : -1], 6);
    return `<path class="drawn-thin" d="M${round(start)} ${y}H${round(x)}V${end}"/>${head}`;
  });
  const cells = given.map(({ from, to, lines: text }) => {
    const size = labelSize(text);
    const top = level(from) - size.height / 2;
    const [left, across] = [middle(to) - size.width / 2 - 2, size.width + 4];
    const ground = `<rect class="drawn-ground" x="${round(left)}" y="${round(top - 1)}" width="${round(across)}" height="${size.height + 2}"/>`;
    return ground + labelSvg(text, middle(to), top, 'middle');
  });
  const boxes = blocks.map((name, i) => {
    const text = name.map((part, line) => [
      { text: part, face: line === 0 ? ('designator' as const) : ('value' as const) },
    ]);
    const [left, top] = [i * step + gap, level(i) - height / 2];
    const box = `<rect class="drawn-block" x="${round(left)}" y="${top}" width="${round(step - 2 * gap)}" height="${height}"/>`;
    return box + labelSvg(text, middle(i), level(i) - labelSize(text).height / 2, 'middle');
  });
  const tall = blocks.length * (height + gap);
  return `<svg class="drawn" id="${escapeXml(id)}-svg" role="img" aria-label="${escapeXml(alt)}" viewBox="0 -2 ${width} ${tall}" style="--drawn:${width}">${lines.join('')}${cells.join('')}${boxes.join('')}</svg>`;
}

const round = (value: number): number => Number(value.toFixed(2));
