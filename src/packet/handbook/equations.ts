import { typesetTerms } from '../../expression/readings/typeset.ts';
import { formatValue } from '../../quantity/figure.ts';
import type { Unit } from '../../quantity/unit.ts';
import type { Result } from '../../spec/board.ts';
import type { Equation } from '../block.ts';
import { figureTex, plain } from '../figures.ts';
import { idTex, symbolLeaves } from '../symbols.ts';
import type { Text } from '../text.ts';
import { usedIn } from '../trail.ts';
import { sentence } from '../words.ts';
import { localText, type Worked } from './worked.ts';

/** Every equation of a method: as symbols, then with the numbers of the worked example put in. */
export const equations = (worked: Worked): Equation[] =>
  worked.circuit.results.map((result) => equation(worked, result));

function equation(worked: Worked, result: Result): Equation {
  const { circuit, inputs, values, trail } = worked;
  const unitOf = (id: string): Unit => (inputs.get(id) ?? circuit.results.find((other) => other.id === id))!.unit;
  const symbol = (id: string): string => figureTex(plain(values.get(id)!, unitOf(id)));
  return {
    kind: 'equation',
    id: result.symbol,
    number: trail.equations.get(result.id)!,
    intro: [`${result.says}:`],
    left: idTex(result.id),
    lines: [
      { label: 'symbols', terms: typesetTerms(result.tree, symbolLeaves(result.tree, circuit.id)) },
      {
        label: 'example',
        terms: typesetTerms(result.tree, { symbol }),
        result: formatValue(values.get(result.id)!, result.unit),
      },
    ],
    notes: [...source(worked, result), ...counted(result), ...uses(worked, result)],
  };
}

function source({ circuit }: Worked, { source: key }: Result): Text[] {
  return key === undefined ? [] : [[sentence(circuit.sources[key] ?? key)]];
}

/** What the board does with it beside this circuit. */
function counted({ heat, stored, load }: Result): Text[] {
  return [
    ...(heat ? [['Counts as heat of the board.']] : []),
    ...(stored ? [['Counts as energy stored on the board.']] : []),
    ...(load ? [[`Counts as a load of the rail ${load}.`]] : []),
  ];
}

function uses({ trail }: Worked, { id }: Result): Text[] {
  const text = localText(usedIn(trail, id));
  return text.length ? [['Used in ', ...text, '.']] : [];
}
