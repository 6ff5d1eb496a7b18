import type { AssumptionFinding } from '../../analysis/findings.ts';
import { formatTyped } from '../../quantity/figure.ts';
import type { Input } from '../../spec/board.ts';
import type { Block, Row, Table } from '../block.ts';
import { figureText, fixed, percent } from '../figures.ts';
import { dash, em, math, verdictMark } from '../inline.ts';
import { marginText } from '../margins.ts';
import type { Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { specifiedAs } from '../tolerance.ts';
import { checkLink, idLink, saysOf } from '../trail.ts';
import { counted, sentence } from '../words.ts';
import { section } from './chapter.ts';
import { sans, serif, wide } from './columns.ts';
import { howToClose } from './how-to-close.ts';

/** What nobody guarantees, by what it may cost, with how to close each. */
export function assumptions(review: Review, number: () => string): Section | undefined {
  const { findings } = review;
  if (!findings.assumptions.length) return undefined;
  const table: Table = {
    kind: 'table',
    id: 'assumptions',
    number: number(),
    caption: [
      'What nobody guarantees: usual values that were taken, and what the specification itself calls typical or assumed; first what may cost the largest part of a margin. If wrong by: half its stated range, or a tenth, 5 K of a temperature (in italics), where none is stated; a range that is stated is inside every worst case already. Costs: what the margin of the check named moves by then, in per cent of the limit.',
    ],
    columns: [
      wide(serif('Symbol'), 0.09),
      wide(serif('What it is'), 0.19),
      wide(serif('Value'), 0.12),
      wide(sans('Basis'), 0.07),
      wide(sans('If wrong by'), 0.07),
      wide(sans('Costs'), 0.06),
      wide(sans('Of the margin of'), 0.16),
      wide(sans('Closed by'), 0.16),
      wide(sans('Stands at'), 0.08),
    ],
    groups: [{ rows: findings.assumptions.map((one) => assumptionRow(review, one)) }],
    wide: true,
  };
  const usual = findings.assumptions.filter(({ basis }) => basis === 'usual value').length;
  const lead: Block = {
    kind: 'paragraph',
    text: [
      `${sentence(`${counted(findings.assumptions.length, 'value')} in this packet ${findings.assumptions.length === 1 ? 'rests' : 'rest'} on nobody's guarantee`)} ${usual ? `${sentence(`${counted(usual, 'is the usual value of a method', 'are usual values of a method')}, taken because the specification is silent`)} ` : ''}Each is closed by a data-sheet limit, a measurement on several boards, or a signed reason.`,
    ],
  };
  return section('conditions', 3, 'assumptions', 'Assumptions not yet guaranteed', [lead, table]);
}

function assumptionRow(review: Review, { symbol, basis, effect, criterion }: AssumptionFinding): Row {
  const input = review.inputs.get(symbol)!;
  return {
    id: `assumption-${symbol}`,
    cells: [
      [math(idTex(symbol))],
      [saysOf(review.trail, review.inputs, input) ?? '–'],
      [valueWords(review, input)],
      [em(basis)],
      effect ? off(effect) : dash,
      effect ? [`${percent(effect.margin, 1, 'up')}\u00a0%`] : dash,
      effect ? marginNow(review, effect.check) : dash,
      [criterion ? 'agreeing on this limit' : howToClose(input, basis)],
      idLink(review.trail, symbol),
    ],
  };
}

function off({ off: size, off_unit: unit, stated }: NonNullable<AssumptionFinding['effect']>): Text {
  const text = unit === 'K' ? `±${fixed(size, 0)}\u00a0K` : `±${percent(size, size < 0.01 ? 1 : 0, 'nearest')}\u00a0%`;
  return stated ? [text] : [em(text)];
}

function marginNow({ judged }: Review, id: string): Text {
  const check = judged.get(id)!;
  return [checkLink(id), ' ', verdictMark(check.verdict, { figure: marginText(check), deviation: check.deviation })];
}

/** As it is specified; an expression by its value. */
function valueWords({ typical }: Review, input: Input): string {
  if (input.value.kind !== 'expression') return specifiedAs(input.value);
  return figureText(formatTyped(typical.get(input.id)!, input.unit));
}
