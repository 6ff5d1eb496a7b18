import { parseQuantity } from '../../quantity/parse-quantity.ts';
import type { Policy } from '../../spec/method-schema.ts';
import type { Row, Table } from '../block.ts';
import { decimal, sans, serif, unit, wide } from '../chapters/columns.ts';
import { plainTyped } from '../figures.ts';
import { dash, math, name } from '../inline.ts';
import type { Section } from '../packet.ts';
import { idTex } from '../symbols.ts';
import { capital, counted, sentence } from '../words.ts';
import type { HandbookPage } from './page.ts';

const columns = [
  wide(sans('Factor'), 0.22),
  wide(serif('Symbol'), 0.16),
  wide(serif('What it asks'), 0.26),
  wide(decimal('Factor'), 0.07),
  wide(unit('unit'), 0.05),
  wide(serif('Source'), 0.16),
  wide(sans('How known'), 0.08),
];

/** Derating policies side by side: what share of a rating the worst case may reach, and who says so. */
export function deratingPage(policies: readonly Policy[]): HandbookPage {
  return {
    id: 'derating',
    title: 'Derating policies',
    question: 'What share of a rating may the worst case reach?',
    lead: [
      `${capital(counted(policies.length, 'policy', 'policies'))}. A spec names one under margins, or writes a table of its own; a method reads its factors by name. Where a factor is known from memory, check it against the bought text before it is made a requirement.`,
    ],
    aside: [],
    sections: policies.map(
      (policy, i): Section => ({
        id: `policy-${policy.id}`,
        number: String(i + 1),
        title: policy.title,
        aside: [],
        blocks: [
          { kind: 'paragraph', text: [name(policy.id), `: ${sentence(policy.says)}`] },
          table(policy, String(i + 1)),
        ],
      }),
    ),
  };
}

function table(policy: Policy, number: string): Table {
  const rows = Object.entries(policy.factors).map(([factor, { is, says, source, known }]): Row => {
    const { typ, unit: typed } = parseQuantity(is);
    const figure = plainTyped(typ, typed);
    return {
      id: `${policy.id}.${factor}`,
      cells: [
        [name(factor)],
        [math(idTex(`derating.${factor}`))],
        [says],
        { number: figure.number },
        figure.unit ? [figure.unit] : dash,
        [policy.sources[source] ?? source],
        [known ?? '–'],
      ],
    };
  });
  return {
    kind: 'table',
    id: `table-${policy.id}`,
    number,
    caption: ['Factors, with who says so.'],
    columns,
    groups: [{ rows }],
    wide: true,
  };
}
