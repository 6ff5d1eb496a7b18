import type { DrawingLine, DrawingRun } from '../../packet/drawing.ts';
import { stretches, svgText } from '../raised.ts';
import { textWidth } from '../text-width.ts';

/** Pixels of letters, and from line to line. */
export const lettering = { size: 10, line: 12, low: 7.5 } as const;

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room that lines of a label take. */
export function labelSize(lines: readonly DrawingLine[]): Size {
  return { width: Math.max(0, ...lines.map(lineWidth)), height: lines.length * lettering.line - 1 };
}

const lineWidth = (line: DrawingLine): number => line.reduce((sum, run) => sum + runWidth(run), 0);

function runWidth({ text, face, low }: DrawingRun): number {
  const size = low ? lettering.low : lettering.size;
  const [weight, slope] = [face === 'designator' ? 600 : 400, sloping(face) ? 'italic' : 'normal'] as const;
  return stretches(text).reduce(
    (sum, { text: part, raised }) => sum + textWidth(part, raised ? size * 0.7 : size, weight, slope),
    0,
  );
}

const sloping = (face: DrawingRun['face']): boolean => face === 'symbol' || face === 'net';

/** SVG of a label whose lines begin, end or centre at `x`, its upper edge at `top`. */
export function labelSvg(
  lines: readonly DrawingLine[],
  x: number,
  top: number,
  anchor: 'start' | 'middle' | 'end',
): string {
  return lines
    .map((line, i) => {
      const y = round(top + 9 + i * lettering.line);
      return `<text class="drawn-text" text-anchor="${anchor}" x="${round(x)}" y="${y}">${lineSvg(line)}</text>`;
    })
    .join('');
}

function lineSvg(line: DrawingLine): string {
  return line
    .map((run, i) => {
      const before = line[i - 1]?.low ?? false;
      const shift = run.low === before || (!run.low && !before) ? '' : ` dy="${run.low ? 2.2 : -2.2}"`;
      return `<tspan class="drawn-${run.face}${run.low ? ' drawn-low' : ''}"${shift}>${svgText(run.text)}</tspan>`;
    })
    .join('');
}

const round = (value: number): number => Number(value.toFixed(2));
