import { describe, expect, test } from 'vitest';
import { drawingSvg } from '../../../src/figures/drawing/drawing-svg.ts';
import { layOut } from '../../../src/figures/drawing/lay-out.ts';
import type { Drawing, DrawingPart } from '../../../src/packet/drawing.ts';
import { overlap } from '../../../src/spec/drawing/frame.ts';
import { drawingOf } from '../../../src/spec/drawing/read-drawing.ts';
import { handbook } from '../../handbook.ts';
import { boardDrawings } from './boards.ts';

/** What a phone shows at the size of the lettering on paper. */
const widest = 346;

/** Labels on one another, on a wire or on a symbol, and drawings too wide for the page. */
function faults([name, drawing]: readonly [string, Pick<Drawing, 'parts'>]): string[] {
  const { labels, obstacles, frame } = layOut(drawing);
  const said = (lines: Drawing['parts'][number]['label']) =>
    lines.map((line) => line.map(({ text }) => text).join('')).join(' ');
  return [
    ...labels.flatMap(({ box, lines }, i) =>
      labels
        .slice(i + 1)
        .flatMap((other) => (overlap(box, other.box) ? [`${name}: ${said(lines)} on ${said(other.lines)}`] : [])),
    ),
    ...labels.flatMap(({ box, lines }) =>
      // A pin's name is itself what others keep clear of.
      obstacles.some((obstacle) => obstacle !== box && overlap(box, obstacle))
        ? [`${name}: ${said(lines)} on a line`]
        : [],
    ),
    ...(frame.right - frame.left > widest ? [`${name}: ${Math.round(frame.right - frame.left)} px wide`] : []),
  ];
}

const ranging: ReadonlySet<string> = new Set(['terminal', 'current', 'flow', 'span', 'note']);

/** A method's drawing with labels as long as a board would make them. */
function lettered(text: { says: string; parts: readonly string[] }): Pick<Drawing, 'parts'> {
  const parts = drawingOf(text).parts.map(({ kind, places, heavy, symbols, words, side }): DrawingPart => {
    const lines = symbols.flatMap((symbol) =>
      [symbol, ranging.has(kind) ? '123.4 to 567.8 V' : '4.75 kΩ'].map((text) => [{ text, face: 'value' as const }]),
    );
    const label = [...(words ? [[{ text: words, face: 'value' as const }]] : []), ...lines];
    return { symbol: kind, places, heavy, label, ...(side ? { side } : {}) };
  });
  return { parts };
}

describe('labels of drawings', () => {
  test('stand clear of symbols, wires and each other on every demo board', () => {
    const drawings = boardDrawings();
    expect(drawings.length).toBeGreaterThan(0);
    expect(drawings.flatMap(faults)).toEqual([]);
  }, 120_000);

  test('and in the drawing of every method', () => {
    const drawn = [...handbook.methods.values()].flatMap(({ id, drawing }) =>
      drawing ? [[id, lettered(drawing)] as const] : [],
    );
    expect(drawn.length).toBeGreaterThan(10);
    expect(drawn.flatMap(faults)).toEqual([]);
  });

  test('a label without room is counted, and stands where it covers least', () => {
    const wall: DrawingPart[] = Array.from({ length: 30 }, (_, i) => ({
      symbol: 'wire',
      places: [
        [0, i],
        [60, i],
      ],
      heavy: false,
      label: [],
    }));
    const part: DrawingPart = {
      symbol: 'terminal',
      places: [[30, 15]],
      heavy: false,
      label: [[{ text: 'a net in a mesh', face: 'net' }]],
    };
    const { crowded, labels } = layOut({ parts: [...wall, part] });
    expect(crowded).toBe(1);
    expect(labels).toHaveLength(1);
  });
});

test('hostile words stay words', () => {
  const part: DrawingPart = {
    symbol: 'terminal',
    places: [[0, 0]],
    heavy: false,
    label: [[{ text: '</text><script>1</script>', face: 'net' }]],
  };
  const svg = drawingSvg({ kind: 'drawing', id: 'd', number: '7.1', caption: [], parts: [part], alt: '"><script>' });
  expect(svg).not.toContain('<script');
  expect(svg).toContain('role="img"');
});
