import type { CornerAxis, CornerCell } from '../../analysis/findings.ts';
import { parseUnit } from '../../quantity/units.ts';
import type { Column, Table } from '../block.ts';
import { figureText, plainTyped, toSi } from '../figures.ts';
import { dash, name as nameOf, verdictMark } from '../inline.ts';
import { cornerMargin, marginText } from '../margins.ts';
import type { Section } from '../packet.ts';
import type { Review } from '../review.ts';
import type { Text } from '../text.ts';
import { checkLink, saysOf } from '../trail.ts';
import { briefly, counted, inWords } from '../words.ts';
import { section } from './chapter.ts';

/** "What if the battery is full and it is hot?" The thinnest margin in each corner of the two conditions that matter most. */
export function corners(review: Review): Section | undefined {
  const grid = review.findings.corners;
  if (!grid) return undefined;
  const { rows, columns } = grid;
  const levels = columns?.levels.map((level): Column => ({ head: levelText(columns, level), align: 'left' }));
  const table: Table = {
    kind: 'table',
    id: 'corners',
    number: '3.2',
    caption: caption(review),
    columns: [
      { head: [], align: 'left', width: 0.22 },
      ...(levels ?? [{ head: ['Thinnest margin'], align: 'left' } satisfies Column]),
    ],
    groups: [
      {
        rows: rows.levels.map((level, i) => ({
          cells: [levelText(rows, level), ...grid.cells[i]!.map(cellText)],
        })),
      },
    ],
    wide: true,
  };
  const title = columns
    ? `Corners of ${wordsFor(review, rows)} and ${wordsFor(review, columns)}`
    : `Corners of ${wordsFor(review, rows)}`;
  return section('summary', 2, 'corners', title, [table]);
}

const wordsFor = ({ inputs, trail }: Review, { condition }: CornerAxis): string => {
  const input = inputs.get(condition)!;
  const says = briefly(saysOf(trail, inputs, input) ?? condition);
  return /^[A-Z][a-z]/.test(says) ? says.charAt(0).toLowerCase() + says.slice(1) : says;
};

/** `pack.V_cell high, 4.2 V`: in words alone, for a narrow screen repeats the heads of columns in the cells. */
function levelText({ condition, unit }: CornerAxis, { name, value }: CornerAxis['levels'][number]): Text {
  const printed = parseUnit(unit === '1' ? '' : unit);
  return [nameOf(condition), ` ${name}, ${figureText(plainTyped(toSi(value, printed), printed))}`];
}

function cellText(cell: CornerCell | null): Text {
  if (!cell) return dash;
  return [verdictMark(cell.verdict, { figure: cornerMargin(cell) }), ' ', checkLink(cell.check)];
}

function caption({ findings, judged }: Review): Text {
  const { checks, others, thinnest_other: other, columns } = findings.corners!;
  const these = columns ? 'these two conditions' : 'this condition';
  const opening = `The thinnest margin with ${these} held, everything else at its worst, among the ${counted(checks, 'check')} that ${columns ? 'they move' : 'it moves'} by a hundredth of the limit or more. ${columns ? 'They are the two that move' : 'It is the one that moves'} the margins most.`;
  const rest: Text = other
    ? [
        ` The other ${inWords(others)} stay as they are; the thinnest of them is `,
        checkLink(other),
        ` with ${marginText(judged.get(other)!)}.`,
      ]
    : [];
  const gaps = findings.corners!.cells.some((row) => row.includes(null))
    ? [' A dash stands where no operating case asks for both.']
    : [];
  return [opening, ...rest, ...gaps];
}
