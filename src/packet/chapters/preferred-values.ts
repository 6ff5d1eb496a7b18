import type { PreferredFinding } from '../../analysis/findings.ts';
import { parseUnit } from '../../quantity/units.ts';
import type { Block, Cell, Column, Row, Table } from '../block.ts';
import { figureText, plainTyped, toSi, typedUnitFor } from '../figures.ts';
import { dash, link, math, strong } from '../inline.ts';
import type { Numbering } from '../numbering.ts';
import type { Review } from '../review.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { counted, inWords } from '../words.ts';
import { sans, serif } from './columns.ts';

const columns: readonly Column[] = [
  sans('Part'),
  serif('Symbol'),
  serif('What it is'),
  serif('Value'),
  sans('Series of its tolerance'),
  serif('Where it stands'),
  serif('Nearest below'),
  serif('Nearest above'),
];

/** Resistors and capacitors that their own series does not hold, and how many it does. */
export function preferredValues(review: Review, numbers: Numbering): Block[] {
  const { preferred } = review.findings;
  if (!preferred.length) return [];
  const strange = preferred.filter(({ stands }) => stands !== 'in series');
  return [
    { kind: 'paragraph', text: summary(preferred, strange) },
    ...(strange.length ? [table(review, strange, numbers)] : []),
  ];
}

function summary(all: readonly PreferredFinding[], strange: readonly PreferredFinding[]): Text {
  const held = all.length - strange.length;
  const none = strange.filter(({ stands }) => stands === 'in none').length;
  const rest =
    strange.length === 0
      ? 'the series of its tolerance holds every one.'
      : `the series of its tolerance holds ${held === 0 ? 'none' : inWords(held)}; ${
          none === 0
            ? 'the others are values that are sold all the same'
            : `${counted(none, 'is', 'are')} no preferred value and must be made of several, or ordered`
        }.`;
  return [
    `Of ${counted(all.length, 'resistor or capacitor', 'resistors and capacitors')}, each against IEC 60063, ${rest}`,
  ];
}

const table = (review: Review, strange: readonly PreferredFinding[], numbers: Numbering): Table => ({
  kind: 'table',
  id: 'preferred-values',
  number: numbers.table(),
  caption: [
    'Values that the series of their tolerance does not hold (IEC 60063). Values of E24 are sold at tighter tolerances too, and shunts below ten milliohms in round values; both are common practice, no source.',
  ],
  columns,
  groups: [{ rows: strange.map((one) => row(review, one)) }],
  wide: true,
});

function row(review: Review, finding: PreferredFinding): Row {
  const { input: id, series, stands, tolerance } = finding;
  const input = review.inputs.get(id)!;
  return {
    id: `preferred-${id}`,
    cells: [
      input.refs ? [strong(input.refs)] : dash,
      [math(idTex(id))],
      [link(input.says ?? id, id)],
      valueCell(finding, finding.value),
      [tolerance === null ? 'no tolerance stated' : series],
      [where[stands]],
      valueCell(finding, finding.below),
      valueCell(finding, finding.above),
    ],
  };
}

const where: Readonly<Record<PreferredFinding['stands'], string>> = {
  'in series': 'in its series',
  'in E24': 'in E24',
  'round shunt': 'a round value of a shunt',
  'in none': 'in no series that it may come from',
};

function valueCell({ unit }: PreferredFinding, value: number): Cell {
  const typed = parseUnit(unit);
  const si = toSi(value, typed);
  return [figureText(plainTyped(si, typedUnitFor([si], typed)))];
}
