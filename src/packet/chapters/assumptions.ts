import type { AssumptionFinding } from '../../analysis/findings.ts';
import { formatTyped } from '../../quantity/figure.ts';
import type { Input } from '../../spec/board.ts';
import type { Block, Row, Table } from '../block.ts';
import { figureText, percent } from '../figures.ts';
import { dash, em, math } from '../inline.ts';
import type { Section } from '../packet.ts';
import type { Review } from '../review.ts';
import { idTex } from '../symbols.ts';
import { specifiedAs } from '../tolerance.ts';
import { checkLink, idLink, saysOf } from '../trail.ts';
import { counted, sentence } from '../words.ts';
import { section } from './chapter.ts';
import { decimal, sans, serif } from './columns.ts';

/** What nobody guarantees, by how much hangs on it. */
export function assumptions(review: Review, number: () => string): Section | undefined {
  const { findings } = review;
  if (!findings.assumptions.length) return undefined;
  const ranked = findings.assumptions
    .map((one) => ({ one, weight: weightOf(review, one) }))
    .toSorted((a, b) => (b.weight?.share ?? 0) - (a.weight?.share ?? 0));
  const table: Table = {
    kind: 'table',
    id: 'assumptions',
    number: number(),
    caption: [
      'What nobody guarantees: usual values that were taken, and what the specification itself calls typical or assumed; what weighs most first. Weight: share in the worst-case range of the result that the check named limits.',
    ],
    columns: [
      serif('Symbol'),
      serif('What it is'),
      serif('Value'),
      sans('Basis'),
      decimal('Weight, %'),
      sans('In'),
      sans('Stands at'),
    ],
    groups: [{ rows: ranked.map(({ one, weight }) => assumptionRow(review, one, weight)) }],
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

interface Weight {
  readonly share: number;
  readonly check: string;
}

/** Where an assumption weighs most: its largest share in the range of a result that some check limits. */
function weightOf({ findings, trail }: Review, { symbol }: AssumptionFinding): Weight | undefined {
  const shares = Object.entries(findings.results).flatMap(([id, { sensitivity }]): Weight[] => {
    const share = sensitivity.find(({ input }) => input === symbol)?.worst;
    const check = trail.limits.get(id)?.[0];
    return share && check ? [{ share, check: check.id }] : [];
  });
  return shares.toSorted((a, b) => b.share - a.share)[0];
}

function assumptionRow(review: Review, { symbol, basis }: AssumptionFinding, weight: Weight | undefined): Row {
  const input = review.inputs.get(symbol)!;
  return {
    cells: [
      [math(idTex(symbol))],
      [saysOf(review.trail, review.inputs, input) ?? '–'],
      [valueWords(review, input)],
      [em(basis)],
      weight ? { number: percent(weight.share, 1, 'nearest') } : dash,
      weight ? [checkLink(weight.check)] : dash,
      idLink(review.trail, symbol),
    ],
  };
}

/** As it is specified; an expression by its value. */
function valueWords({ typical }: Review, input: Input): string {
  if (input.value.kind !== 'expression') return specifiedAs(input.value);
  return figureText(formatTyped(typical.get(input.id)!, input.unit));
}
