import type { ProposalFinding, ProposedFinding } from '../../analysis/findings.ts';
import { parseUnit } from '../../quantity/units.ts';
import type { Block, Cell, Column, Row } from '../block.ts';
import { figureText, fixed, outward, plainTyped, toSi, typedUnitFor } from '../figures.ts';
import { dash, joined, link, math } from '../inline.ts';
import type { Numbering } from '../numbering.ts';
import type { Review } from '../review.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { checkLink } from '../trail.ts';
import { sans, serif } from './columns.ts';

const columns: readonly Column[] = [
  serif('Result'),
  serif('Wanted'),
  serif('Chosen'),
  serif('gives'),
  serif('Thinnest margin'),
  serif('Best preferred values'),
  serif('give'),
  serif('Thinnest margin'),
  sans('Chosen is'),
];

/** For every result that a method has a target for: the values chosen beside the best preferred ones. */
export function proposals(review: Review, numbers: Numbering): Block[] {
  const { proposals: all } = review.findings;
  if (!all.length) return [];
  return [
    {
      kind: 'table',
      id: 'proposals',
      number: numbers.table(),
      caption: [
        'Values chosen beside those of the series of their tolerance, from half to twice the chosen ones, that bring the result nearest to what is wanted, everything typical. The margin is the worst case of the circuit’s checks that these values move, tolerances as specified.',
      ],
      columns,
      groups: [{ rows: all.map((one) => row(review, one)) }],
      wide: true,
    },
  ];
}

function row(review: Review, proposal: ProposalFinding): Row {
  const { id, of, unit, target, chosen, best, differs } = proposal;
  return {
    id: `proposal-${id}`,
    cells: [
      [link(review.results.get(of)!.says, of)],
      [figure(target, unit)],
      values(review, chosen),
      gives(chosen, unit),
      margin(chosen),
      ...(differs ? [values(review, best), gives(best, unit), margin(best)] : [dash, dash, dash]),
      [differs ? 'another' : 'the best'],
    ],
  };
}

function values(review: Review, { values: all }: ProposedFinding): Cell {
  return joined(
    Object.entries(all).map(([id, value]): Text => {
      const { unit } = review.inputs.get(id)!;
      const si = toSi(value, unit);
      return [math(idTex(id)), ` ${figureText(plainTyped(si, typedUnitFor([si], unit)))}`];
    }),
    ', ',
  );
}

function gives({ result, error }: ProposedFinding, unit: string): Cell {
  const off = error === null ? '' : ` (${error > 0 ? '+' : ''}${fixed(error * 100, 2)}\u00a0%)`;
  return [`${figure(result, unit)}${off}`];
}

const margin = ({ margin: share, check }: ProposedFinding): Cell =>
  share === null || check === null ? dash : [`${fixed(share * 100, 1, 'down')}\u00a0%, `, checkLink(check)];

function figure(value: number, unit: string): string {
  const typed = parseUnit(unit);
  return figureText(outward(toSi(value, typed), typed, 'nearest', 4));
}
