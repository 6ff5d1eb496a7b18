import { expect, test } from 'vitest';
import { parseUnit } from '../../src/quantity/units.ts';
import { shown } from './shown.ts';

/** What is typed, the place that is wrong, and what is said of it. */
const refused = [
  `mVolt
^^^^^ unknown-unit
found the unit "mVolt"; expected a unit such as V, kohm, µF or K/W. Did you mean mV?`,
  `KOHM
^^^^ unknown-unit
found the unit "KOHM"; expected a unit such as V, kohm, µF or K/W. Did you mean kOhm?`,
  `mhz
^^^ unknown-unit
found the unit "mhz"; expected a unit such as V, kohm, µF or K/W. Did you mean mHz or MHz?`,
  `mmin
^^^^ unknown-unit
found the unit "mmin"; expected a unit such as V, kohm, µF or K/W. Did you mean min?`,
  `Vs
^^ unknown-unit
found the unit "Vs"; expected a unit such as V, kohm, µF or K/W. Did you mean V s?`,
  `k
^ unknown-unit
found the unit "k"; expected a unit such as V, kohm, µF or K/W. k alone is a prefix: write its unit too, as in kohm, or e3 for a number.`,
  `foo
^^^ unknown-unit
found the unit "foo"; expected a unit such as V, kohm, µF or K/W. If foo is a symbol, put an operator before it: 2 * x.`,
  `V/
 ^ unexpected
found "/"; expected the end of the unit.`,
  `V +
  ^ unexpected
found "+"; expected the end of the unit.`,
  `10k
^^^ missing-unit
found "10k"; expected a unit such as V, kohm, µF or K/W (1 for a pure number).`,
  `W/m K
^^^^^ ambiguous-unit
found "W/m K", which can be read two ways; expected brackets around what is divided by, such as W/(m K) or W K/m.`,
  `J/kg*K
^^^^^^ ambiguous-unit
found "J/kg*K", which can be read two ways; expected brackets around what is divided by, such as J/(kg K) or J K/kg.`,
  `W/(m K
  ^^^^ open-bracket
found "(m K"; expected a closing bracket, such as in W/(m K).`,
  `m^0
 ^^ bad-power
found the power "^0"; expected a power such as mm^2, mm² or Hz^0.5.`,
  `m^99
 ^^^ bad-power
found the power "^99"; expected a power such as mm^2, mm² or Hz^0.5.`,
  `m^
 ^ bad-power
found the power "^"; expected a power such as mm^2, mm² or Hz^0.5.`,
  `m^x
 ^^ bad-power
found the power "^x"; expected a power such as mm^2, mm² or Hz^0.5.`,
  `mm4
  ^ unexpected
found "4"; expected the end of the unit.`,
  `°F
^^ unknown-unit
found the unit "°F"; expected a unit such as V, kohm, µF or K/W. Write temperatures in degC.`,
  `5 V
^^^ missing-unit
found "5 V"; expected a unit such as V, kohm, µF or K/W (1 for a pure number).`,
  `V V_x
  ^^^ unknown-unit
found the unit "V_x"; expected a unit such as V, kohm, µF or K/W. If V_x is a symbol, put an operator before it: 2 * x.`,
  `deg C
^^^^^ unknown-unit
found the unit "deg C"; expected degC or °C in one word. Write degC.`,
  `oz
^^ unknown-unit
found the unit "oz"; expected a unit such as V, kohm, µF or K/W. Copper weight is not a length: write the foil as 35 um for 1 oz.`,
  `millivolts
^^^^^^^^^^ unknown-unit
found the unit "millivolts"; expected a unit such as V, kohm, µF or K/W. Did you mean mV?`,
  `KHz
^^^ unknown-unit
found the unit "KHz"; expected a unit such as V, kohm, µF or K/W. Did you mean kHz?`,
  `R
^ unknown-unit
found the unit "R"; expected a unit such as V, kohm, µF or K/W. Did you mean ohm?`,
  `V/A/s*m
^^^^^^^ ambiguous-unit
found "V/A/s*m", which can be read two ways; expected brackets around what is divided by, such as W/(m K).`,
  `m²²²
 ^^^ bad-power
found the power "²²²"; expected a power such as mm^2, mm² or Hz^0.5.`,
];

test.each(refused.map((all) => [all.split('\n')[0]!, all]))('%j is refused', (typed, all) => {
  expect(shown(parseUnit, typed)).toBe(all);
});
