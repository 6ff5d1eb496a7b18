import { expect, test } from 'vitest';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { shown } from './shown.ts';

/** What is typed, the place that is wrong, and what is said of it. */
const refused = [
  `
^ missing-number
found nothing; expected a number such as 10 or 3.3 V.`,
  `V
^ missing-number
found "V"; expected a number such as 10 or 3.3 V.`,
  `abc
^^^ missing-number
found "abc"; expected a number such as 10 or 3.3 V.`,
  `10 V ±
      ^ missing-number
found nothing; expected a number after ±, such as ±1 %.`,
  `10 V ±%
      ^ missing-number
found "%"; expected a number after ±, such as ±1 %.`,
  `±5 %
^ missing-number
found "±"; expected a number such as 10 or 3.3 V.`,
  `3,3 V
^^^ decimal-comma
found "3,3" with a comma; expected a point before the decimals. Write 3.3.`,
  `1,000 V
^^^^^ decimal-comma
found "1,000" with a comma; expected a point before the decimals. Write 1000 or 1.000.`,
  `1,000.5 V
^^^^^^^ decimal-comma
found "1,000.5" with a comma; expected a point before the decimals. Write 1000.5.`,
  `1_000 V
^^^^^ digit-groups
found "1_000"; expected digits without anything between. Write 1000.`,
  `1'000 V
^^^^^ digit-groups
found "1'000"; expected digits without anything between. Write 1000.`,
  `1 000 V
^^^^^ digit-groups
found "1 000"; expected digits without anything between. Write 1000.`,
  `12 345.6 V
^^^^^^^^ digit-groups
found "12 345.6"; expected digits without anything between. Write 12345.6.`,
  `１０ V
^^ full-width
found "１０" in full-width digits; expected plain digits. Write 10.`,
  `5. V
^^ missing-decimals
found "5."; expected digits after the point, or no point.`,
  `10k
  ^ unknown-unit
found the unit "k"; expected a unit such as V, kohm, µF or K/W. k alone is a prefix: write its unit too, as in kohm, or e3 for a number.`,
  `4k7
^^^ letter-for-point
found "4k7"; expected a number, a space and a unit. Write 4.7 kohm.`,
  `3V3
^^^ letter-for-point
found "3V3"; expected a number, a space and a unit. Write 3.3 V.`,
  `2u2 ±10 %
^^^ letter-for-point
found "2u2"; expected a number, a space and a unit. Write 2.2 uF.`,
  `10R0
^^^^ letter-for-point
found "10R0"; expected a number, a space and a unit. Write 10.0 ohm.`,
  `10 kOhmm ±1 %
   ^^^^^ unknown-unit
found the unit "kOhmm"; expected a unit such as V, kohm, µF or K/W. Did you mean kOhm?`,
  `10 KOHM
   ^^^^ unknown-unit
found the unit "KOHM"; expected a unit such as V, kohm, µF or K/W. Did you mean kOhm?`,
  `5 Mhz
  ^^^ unknown-unit
found the unit "Mhz"; expected a unit such as V, kohm, µF or K/W. Did you mean MHz or mHz?`,
  `5 mhz
  ^^^ unknown-unit
found the unit "mhz"; expected a unit such as V, kohm, µF or K/W. Did you mean mHz or MHz?`,
  `10 mVolt
   ^^^^^ unknown-unit
found the unit "mVolt"; expected a unit such as V, kohm, µF or K/W. Did you mean mV?`,
  `35 oz
   ^^ unknown-unit
found the unit "oz"; expected a unit such as V, kohm, µF or K/W. Copper weight is not a length: write the foil as 35 um for 1 oz.`,
  `25 C ±2 K
     ^^^^ tolerance-unit
found "±2 K", which is a temperature; expected a tolerance in C or %, or a drift in ppm/K. C is the coulomb: write a temperature in degC.`,
  `25 deg C
   ^^^^^ unknown-unit
found the unit "deg C"; expected degC or °C in one word. Write degC.`,
  `10 V foo
     ^^^ unknown-word
found the word "foo"; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution.`,
  `10 V ±1 % normaal
          ^^^^^^^ unknown-word
found the word "normaal"; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution. Did you mean normal?`,
  `10 V Normal
     ^^^^^^ unknown-word
found the word "Normal"; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution. Did you mean normal?`,
  `10 V to
       ^ missing-number
found nothing; expected a number after to, such as 3.0 to 4.2 V.`,
  `10 V typ 3 V
     ^^^ misplaced-word
found the word "typ" out of its place; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution. It belongs behind a range: 3.0 to 4.2 V typ 3.6 V.`,
  `10 V, 5 %
    ^^^^^ unexpected
found ", 5 %"; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution. Leave the comma out: a space is enough.`,
  `10 V 5 %
     ^^^ loose-number
found "5 %"; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution. Did you mean ±5 %?`,
  `5 V 10
    ^^ loose-number
found "10"; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution. Did you mean ±10?`,
  `10 V * 2
     ^^^ unexpected
found "* 2"; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution.`,
  `10 V (5 %)
     ^^^^^ unexpected
found "(5 %)"; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution.`,
  `10 V\u200b
    ^ unexpected
found "\u200b"; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution. It is the invisible character U+200B.`,
  `–5 V
^ missing-number
found "–"; expected a number such as 10 or 3.3 V. A dash is not a minus sign: write - instead.`,
  `3.0–4.2 V
   ^ range-sign
found "–"; expected the word "to" between the ends of a range, such as 3.0 to 4.2 V.`,
  `3..4 V
 ^^ range-sign
found ".."; expected the word "to" between the ends of a range, such as 3.0 to 4.2 V.`,
  `3 to 4.2 V, typ 3.6 V
          ^^^^^^^^^^^ range-with-spread
found ", typ 3.6 V"; expected nothing after a range, or typ and its typical value. Leave the comma out: a space is enough.`,
  `4.2 to 3.0 V
^^^^^^^^^^^^ reversed
found "4.2 to 3.0 V"; expected the lower end first. Did you mean 3.0 V to 4.2 V?`,
  `3 to 4.2 V typ 5 V
               ^^^ outside-range
found the typical value "5 V"; expected a typical value between the two ends.`,
  `3 V to 4.2 A
       ^^^^^ wrong-kind
found "4.2 A", which is a current; expected a voltage like the rest, in V.`,
  `3 to 4.2 V ±1 %
           ^^^^ range-with-spread
found "±1 %"; expected nothing after a range, or typ and its typical value. A range is a condition to endure, not a part with a tolerance: widen its ends instead.`,
  `3 to 4.2 V uniform
           ^^^^^^^ range-with-spread
found "uniform"; expected nothing after a range, or typ and its typical value. A range is a condition to endure, not a part with a tolerance: widen its ends instead.`,
  `4 / 6 uA
^^^^^^^^ triple
found "4 / 6 uA"; expected three numbers, minimum / typical / maximum, such as 4 / 5 / 6 uA. For a range to endure write 4 to 6 uA.`,
  `6 / 5 / 4 uA
^^^^^ reversed
found "6 / 5"; expected minimum / typical / maximum in rising order. Did you mean 4 µA / 5 µA / 6 µA?`,
  `4 / 6 / 5 uA
    ^^^^^^^^ reversed
found "6 / 5 uA"; expected minimum / typical / maximum in rising order. Did you mean 4 µA / 5 µA / 6 µA?`,
  `4 uA / 5 uA / 6 V
              ^^^ wrong-kind
found "6 V", which is a voltage; expected a current like the rest, in µA.`,
  `4 / 5 / 6 uA ±1 %
             ^^^^ triple-tolerance
found "±1 %"; expected no tolerance: minimum / typical / maximum are the limits.`,
  `4 / 5 / 6 / 7 uA
          ^^^^^^ unexpected
found "/ 7 uA"; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution.`,
  `4 / / 6
    ^ missing-number
found "/"; expected a number after /, such as 4 / 5 / 6 uA.`,
  `10 V sd
       ^ missing-number
found nothing; expected a number after sd, such as sd 5 mV.`,
  `10 V sd 0 V
        ^^^ bad-deviation
found the standard deviation "0 V"; expected a deviation above 0, such as sd 5 mV.`,
  `10 V sd 5 mA
        ^^^^ wrong-kind
found "5 mA", which is a current; expected a voltage like the rest, in V.`,
  `25 degC sd 2 %
           ^^^ share-of-temperature
found "2 %" of a temperature in °C; expected a tolerance in kelvin, such as ±2 K. The zero of the Celsius scale is arbitrary, so a share of it means nothing.`,
  `0 V sd 1 %
       ^^^ share-of-zero
found "1 %" of 0, which is no spread; expected the spread in V, such as ±1 V.`,
  `10 V sd 0.1 V uniform
              ^^^^^^^ measured-spread
found "uniform"; expected nothing: a measured spread, mean sd s, is normal and whole.`,
  `mean 10 V
         ^ missing-deviation
found nothing; expected the standard deviation after the mean, such as mean 2.1 mohm sd 0.05 mohm.`,
  `10 V ±5 mA
     ^^^^^ tolerance-unit
found "±5 mA", which is a current; expected a tolerance in V or %, or a drift in ppm/K.`,
  `10 V ±100 uA/K
     ^^^^^^^^^ tolerance-unit
found "±100 uA/K", which is a current drift; expected a tolerance in V or %, or a drift in ppm/K.`,
  `10 V ±1
     ^^ missing-unit
found "±1" without a unit; expected a tolerance in V or %. Write ±1 V or ±1 %.`,
  `50 % ±2
     ^^ missing-unit
found "±2" without a unit; expected minimum / typical / maximum, such as 88 / 90 / 92 %.`,
  `90 % ±1.5 %
     ^^^^^^ share-of-share
found "±1.5 %" on a value in %, which can be read two ways; expected 0.9 ±1.5 % for a share of the value, or 88.5 / 90 / 91.5 % for limits.`,
  `100 ppm ±20 ppm
        ^^^^^^^ share-of-share
found "±20 ppm" on a value in ppm, which can be read two ways; expected 0.0001 ±20 ppm for a share of the value, or 80 / 100 / 120 ppm for limits.`,
  `10 V ±1 % ±2 %
          ^^^^ said-twice
found a second tolerance, "±2 %"; expected one tolerance.`,
  `10 V ±1 % age ±1 % age ±2 %
                   ^^^^^^^^ said-twice
found a second ageing, "age ±2 %"; expected one ageing.`,
  `10 kohm ±5 ppm/K ±1 ppm/K
                 ^^^^^^^^ said-twice
found a second drift, "±1 ppm/K"; expected one drift.`,
  `10 V ±1 % normal uniform
                 ^^^^^^^ said-twice
found a second distribution, "uniform"; expected one distribution.`,
  `10 V ±-1 %
     ^^ double-sign
found "±-"; expected a number without a sign after ±. Write +2 % -1 % for two sides.`,
  `10 V ± + 1 %
     ^^^ double-sign
found "± +"; expected a number without a sign after ±. Write +2 % -1 % for two sides.`,
  `10 V +5 %
     ^^^^ one-sided
found "+5 %" with one side only; expected both sides, such as +5 % -0 %. In an expression, put a space on both sides of + or -.`,
  `10 V -5 mV
     ^^^^^ one-sided
found "-5 mV" with one side only; expected both sides, such as +0 mV -5 mV. In an expression, put a space on both sides of + or -.`,
  `10 V +5 % +3 %
     ^^^^^^^^^ same-sign
found "+5 % +3 %" with one sign twice; expected one side with + and one with -.`,
  `10 V +5 % -3 mV
          ^^^^^ wrong-kind
found "-3 mV", which is a voltage; expected a pure number like the rest, in %.`,
  `10 V +5 mV -3 %
           ^^^^ wrong-kind
found "-3 %", which is a pure number; expected a voltage like the rest, in mV.`,
  `0 V ±1 %
    ^^^^ share-of-zero
found "±1 %" of 0, which is no spread; expected the spread in V, such as ±1 V.`,
  `0 ohm ±100 ppm/K
      ^^^^^^^^^^ share-of-zero
found "±100 ppm/K" of 0, which is no drift; expected the drift in Ω/K, such as ±1 Ω/K.`,
  `0 V ±5 mV age ±1 %
          ^^^^^^^^ share-of-zero
found "age ±1 %" of 0, which is no spread; expected the spread in V, such as ±1 V.`,
  `10 V ±120 %
     ^^^^^^ sign-change
found "±120 %", which turns the value's sign; expected at most -100 %. If the value may change sign, give the spread in its own unit.`,
  `10 V +200 % -101 %
     ^^^^^^^^^^^^^ sign-change
found "+200 % -101 %", which turns the value's sign; expected at most -100 %. If the value may change sign, give the spread in its own unit.`,
  `10 V age ±200 %
     ^^^^^^^^^^ sign-change
found "age ±200 %", which turns the value's sign; expected at most -100 %. If the value may change sign, give the spread in its own unit.`,
  `25 degC ±5 %
        ^^^^ share-of-temperature
found "±5 %" of a temperature in °C; expected a tolerance in kelvin, such as ±2 K. The zero of the Celsius scale is arbitrary, so a share of it means nothing.`,
  `25 degC ±100 ppm/K
        ^^^^^^^^^^ share-of-temperature
found "±100 ppm/K" of a temperature in °C; expected a tolerance in kelvin, such as ±2 K. The zero of the Celsius scale is arbitrary, so a share of it means nothing.`,
  `25 degC age ±1 %
        ^^^^^^^^ share-of-temperature
found "age ±1 %" of a temperature in °C; expected a tolerance in kelvin, such as ±2 K. The zero of the Celsius scale is arbitrary, so a share of it means nothing.`,
  `10 V age
        ^ missing-sign
found nothing; expected a change with its sign after age, such as age ±0.5 % or age -20 %.`,
  `10 V age 5 %
         ^ missing-sign
found "5"; expected a change with its sign after age, such as age ±0.5 % or age -20 %.`,
  `10 V age ±5 mV
     ^^^^^^^^^ ageing-unit
found "age ±5 mV"; expected ageing as a share of the value, such as age ±0.5 %.`,
  `10 V age ±5
     ^^^^^^ ageing-unit
found "age ±5"; expected ageing as a share of the value, such as age ±0.5 %.`,
  `10 V normal
     ^^^^^^ nothing-spread
found the distribution "normal"; expected a distribution only where there is a tolerance, such as 10 kohm ±1 % uniform.`,
  `10 V ±100 ppm/K uniform
                ^^^^^^^ nothing-spread
found the distribution "uniform"; expected a distribution only where there is a tolerance, such as 10 kohm ±1 % uniform.`,
  `-300 degC
^^^^^^^^^ below-zero-kelvin
found "-300 degC"; expected a temperature above −273.15 °C.`,
  `1e999 V
^^^^^ number-range
found the number "1e999"; expected a number between 1e-100 and 1e100.`,
  `1e-999 V
^^^^^^ number-range
found the number "1e-999"; expected a number between 1e-100 and 1e100.`,
  `1e101 V
^^^^^^^ number-range
found the number "1e101 V"; expected a number between 1e-100 and 1e100.`,
  `99999999999999999999999999999999999999999 V
^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ number-range
found the number "999999999999999999999999999999999999999…"; expected a number of at most 40 characters.`,
  `5 V ±1e150 V
     ^^^^^^^ number-range
found the number "1e150 V"; expected a number between 1e-100 and 1e100.`,
  `10 V/A s ±5 %
   ^^^^^ ambiguous-unit
found "V/A s", which can be read two ways; expected brackets around what is divided by, such as V/(A s) or V s/A.`,
  `5 V ±1 %;
        ^ unexpected
found ";"; expected a tolerance such as ±1 %, a drift such as ±100 ppm/K, an ageing such as age ±0.5 %, or a distribution.`,
];

test.each(refused.map((all) => [all.split('\n')[0]!, all]))('%j is refused', (typed, all) => {
  expect(shown(parseQuantity, typed)).toBe(all);
});
