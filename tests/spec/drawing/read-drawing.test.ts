import { describe, expect, test } from 'vitest';
import { junctions } from '../../../src/spec/drawing/connections.ts';
import { parsePart } from '../../../src/spec/drawing/parse-part.ts';
import { drawingOf, readDrawing } from '../../../src/spec/drawing/read-drawing.ts';
import { Report } from '../../../src/spec/report.ts';
import { readYaml } from '../../../src/spec/yaml-file.ts';

const divider = [
  'terminal 0,2 V_in',
  'wire 0,2 8,2',
  'resistor 8,2 8,8 R_top',
  'resistor 8,8 8,14 R_bot',
  'wire 8,8 16,8',
  'terminal 16,8 V_out',
  'ground 8,14',
];

/** Code and line of every problem with a drawing. */
function problemsOf(parts: readonly string[]): string[] {
  const yaml = readYaml(
    `drawing:\n  says: A divider\n  parts:\n${parts.map((part) => `    - ${part}\n`).join('')}`,
    'm.yaml',
  );
  const report = new Report(yaml);
  const { drawing } = yaml.data as { drawing: { says: string; parts: string[] } };
  readDrawing(report, ['drawing'], drawing, ['V_in', 'R_top', 'R_bot', 'V_out']);
  return report.problems.map(({ code, line, column }) => `${line}:${column} ${code}`);
}

describe('a drawing', () => {
  test('that is whole has no problems', () => {
    expect(problemsOf(divider)).toEqual([]);
  });

  test('is read line by line', () => {
    expect(parsePart('shunt 4,2 4,8 8,4 8,6 heavy R_sh "of one leg" left')).toEqual({
      kind: 'shunt',
      places: [
        [4, 2],
        [4, 8],
        [8, 4],
        [8, 6],
      ],
      symbols: ['R_sh'],
      heavy: true,
      words: 'of one leg',
      side: 'left',
    });
  });

  test.each([
    ['a symbol nobody draws', 'resistr 8,2 8,8 R_top', '4:7 unknown-drawing-symbol'],
    ['a place that is none', 'resistor 8,2 8;8 R_top', '4:20 not-a-place'],
    ['too few places', 'resistor 8,2 R_top', '4:16 places'],
    ['too many places', 'ground 8,2 8,4', '4:18 places'],
    ['a slanting symbol', 'resistor 8,2 9,8 R_top', '4:20 not-straight'],
    ['ends too close', 'resistor 8,2 8,4 R_top', '4:20 too-short'],
    ['a gate beside nothing', 'mosfet 8,2 8,8 6,4 R_top', '4:22 misplaced-end'],
    ['sense ends astray', 'shunt 8,2 8,8 10,2 10,8 R_top', '4:26 misplaced-end'],
    ['a label that is no name', 'resistor 8,2 8,8 2R', '4:24 not-a-place'],
  ])('refuses %s', (_, line, problem) => {
    expect(problemsOf([line, ...divider.slice(3)])).toEqual([problem]);
  });

  test('refuses a name that the circuit does not know', () => {
    expect(problemsOf(divider.with(2, 'resistor 8,2 8,8 R_tip'))).toEqual(['6:7 unknown-name']);
  });

  test('refuses a symbol on another one, at both', () => {
    expect(problemsOf([...divider, 'capacitor 8,2 8,8'])).toEqual(['6:7 parts-overlap', '11:7 parts-overlap']);
  });

  test('refuses a wire through a symbol', () => {
    expect(problemsOf([...divider, 'wire 8,2 8,8'])).toEqual(['11:7 wire-through-part']);
  });

  test('refuses ends that meet nothing', () => {
    expect(problemsOf([...divider, 'capacitor 12,8 12,14'])).toEqual(['11:7 loose-end']);
    expect(problemsOf(divider.toSpliced(1, 1))).toEqual(['4:7 loose-end', '5:7 loose-end']);
  });

  test('has a dot where three conductors meet, none where two pass', () => {
    expect(junctions(drawingOf({ says: '', parts: divider }).parts)).toEqual([[8, 8]]);
    expect(junctions([parsePart('wire 0,4 8,4'), parsePart('wire 4,0 4,8')])).toEqual([]);
  });
});
