import type { StimulusFinding } from '../../analysis/findings.ts';
import { parseUnit } from '../../quantity/units.ts';
import { figureText, plainTyped, toSi } from '../figures.ts';
import { dash, joined, math } from '../inline.ts';
import { idTex, parted } from '../symbols.ts';
import type { Text } from '../text.ts';

/** What is applied, as an equation each: V_in = 36 V. A dash where the board is only powered. */
export function stimulusText(when: StimulusFinding['when'], reads: string): Text {
  const { circuit } = parted(reads);
  const set = Object.entries(when);
  if (!set.length) return dash;
  const text = ({ value, unit }: { readonly value: number; readonly unit: string }): string => {
    const printed = parseUnit(unit);
    return figureText(plainTyped(toSi(value, printed), printed));
  };
  return joined(
    set.map(
      ([symbol, quantity]): Text => [
        math(idTex(symbol.includes('.') ? symbol : `${circuit}.${symbol}`)),
        ` = ${text(quantity)}`,
      ],
    ),
    ', ',
  );
}

/** The conditions that are left at typical and that the reading depends on; air is as it is. */
function heldText({ held, when }: StimulusFinding): Text {
  const others = Object.entries(held).filter(([, { unit }]) => unit !== '°C');
  if (!others.length) return [];
  const start = Object.keys(when).length ? '; typical ' : 'typical ';
  return [
    start,
    ...joined(
      others.map(([id, { value, unit }]): Text => {
        const printed = parseUnit(unit);
        return [math(idTex(id)), ` = ${figureText(plainTyped(toSi(value, printed), printed))}`];
      }),
      ', ',
    ),
  ];
}

/** What is applied and what is left at typical. */
export function setUp(finding: StimulusFinding): Text {
  const held = heldText(finding);
  return held.length && !Object.keys(finding.when).length
    ? held
    : [...stimulusText(finding.when, finding.reads), ...held];
}
