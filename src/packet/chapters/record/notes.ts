import type { NoteBlock, NoteInline, NoteText, ValueAt } from '../../../spec/notes/notes.ts';
import type { Block, Table } from '../../block.ts';
import { figureText, outward, plain, toSi } from '../../figures.ts';
import { em, link, name, strong, verdictMark } from '../../inline.ts';
import { marginText } from '../../margins.ts';
import type { Numbering } from '../../numbering.ts';
import type { Review } from '../../review.ts';
import { rangeText } from '../../strips.ts';
import type { Inline, Text } from '../../text.ts';
import { checkLink, idLink } from '../../trail.ts';
import { serif } from '../columns.ts';
import { equationOf } from '../equation.ts';
import { figureOf } from '../histograms.ts';

/** What the engineer wrote beside the numbers, with every number as it was found. */
export function notes(review: Review, numbers: Numbering): Block[] {
  let equations = 0;
  return (review.board.notes ?? []).map((note, i): Block => {
    switch (note.kind) {
      case 'paragraph':
        return { kind: 'paragraph', text: textOf(review, note.text) };
      case 'heading':
        return { kind: 'heading', text: note.text };
      case 'list':
        return { kind: 'list', ordered: note.ordered, items: note.items.map((item) => textOf(review, item)) };
      case 'table':
        return tableOf(review, note, i, numbers.table());
      case 'equation':
        return equation(review, note.id, ++equations);
      case 'figure':
        return figure(review, note.id, i, numbers);
      default:
        return note satisfies never;
    }
  });
}

const textOf = (review: Review, text: NoteText): Text => text.flatMap((one) => inline(review, one));

function inline(review: Review, one: NoteInline): Text {
  if (typeof one === 'string') return [one];
  switch (one.kind) {
    case 'strong':
      return [strong(one.text)];
    case 'em':
      return [em(one.text)];
    case 'code':
      return [name(one.text)];
    case 'link':
      return [link(one.text, one.to)];
    case 'value':
      return [link(valueText(review, one.id, one.at), one.id)];
    case 'check': {
      const finding = review.judged.get(one.id)!;
      const mark: Inline = verdictMark(finding.verdict, { figure: marginText(finding), deviation: finding.deviation });
      return [checkLink(one.id), ', ', mark];
    }
    default:
      return one satisfies never;
  }
}

/** A number as it was found; ends of a range are rounded outward. */
function valueText(review: Review, id: string, at: ValueAt): string {
  const result = review.results.get(id);
  const { unit } = result ?? review.inputs.get(id)!;
  const [min, typ, max] = result ? resultEnds(review, id) : inputEnds(review, id);
  if (at === 'range') return rangeText({ min, max }, unit);
  if (at === 'typical') return figureText(plain(toSi(typ, unit), unit));
  return figureText(at === 'lowest' ? outward(toSi(min, unit), unit, 'down') : outward(toSi(max, unit), unit, 'up'));
}

type Ends = readonly [min: number, typ: number, max: number];

const resultEnds = ({ findings }: Review, id: string): Ends => {
  const { worst, nominal } = findings.results[id]!;
  return [worst.min, nominal, worst.max];
};
const inputEnds = ({ findings }: Review, id: string): Ends => {
  const { min, typ, max } = findings.inputs[id]!;
  return [min, typ, max];
};

function equation(review: Review, id: string, position: number): Block {
  const known = equationOf(review, review.results.get(id)!);
  return {
    ...known,
    id: `note-${position}-${id}`,
    number: `15.${position}`,
    intro: [...known.intro, ' (', ...idLink(review.trail, id), ')'],
  };
}

function figure(review: Review, id: string, i: number, numbers: Numbering): Block {
  const finding = review.judged.get(id)!;
  if (!finding.spread) return { kind: 'paragraph', text: inline(review, { kind: 'check', id }) };
  return {
    ...figureOf(review, finding, finding.spread, numbers.figure()),
    id: `note-figure-${i + 1}`,
    width: 'column',
  };
}

function tableOf(
  review: Review,
  { head, rows }: Extract<NoteBlock, { kind: 'table' }>,
  i: number,
  number: string,
): Table {
  return {
    kind: 'table',
    id: `note-table-${i + 1}`,
    number,
    caption: ['As noted by the designer.'],
    columns: head.map((text) => ({ ...serif(''), head: textOf(review, text) })),
    groups: [{ rows: rows.map((cells) => ({ cells: cells.map((cell) => textOf(review, cell)) })) }],
  };
}
