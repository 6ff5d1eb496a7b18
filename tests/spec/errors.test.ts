import { describe, expect, test } from 'vitest';
import { messagesFor, read, spec } from './spec-text.ts';

const divider = (changes: Record<string, string> = {}) => {
  const given = {
    V_in: '10 V to 20 V',
    R_top: '100 kohm ±1 %',
    R_bot: '10 kohm ±1 %',
    C_f: '10 nF',
    V_fs: '3.3 V',
    ...changes,
  };
  const lines = Object.entries(given)
    .filter(([, value]) => value !== '')
    .map(([key, value]) => `      ${key}: ${value}`);
  return `circuits:\n  sense:\n    method: voltage-divider\n    given:\n${lines.join('\n')}\n`;
};

describe('a problem is shown with its place, what was found, what was expected and the next step', () => {
  test('a unit of another dimension', () => {
    expect(messagesFor(divider({ R_top: '100 kV ±1 %' }))).toMatchInlineSnapshot(`
      "spec.yaml:12:14  wrong-unit
        circuits.sense.given.R_top: found \`100 kV ±1 %\`, which is a voltage; expected a resistance such as \`150 kohm\`.
        11 |       V_in: 10 V to 20 V
        12 |       R_top: 100 kV ±1 %
           |              ^^^^^^^^^^^"
    `);
  });
  test('an unknown unit', () => {
    expect(messagesFor(divider({ R_top: '100 kohn ±1 %' }))).toMatchInlineSnapshot(`
      "spec.yaml:12:18  unknown-unit
        circuits.sense.given.R_top: found the unit "kohn"; expected a unit such as V, kohm, µF or K/W.
        11 |       V_in: 10 V to 20 V
        12 |       R_top: 100 kohn ±1 %
           |                  ^^^^
        Did you mean kohm?"
    `);
  });
  test('an unknown symbol in an expression', () => {
    expect(
      messagesFor(
        `${divider()}  ramp:\n    given: { C: 10 nF }\n    equations:\n      t: { is: C * sense.R_tpo, unit: s, says: Time }\n`,
      ),
    ).toMatchInlineSnapshot(`
      "spec.yaml:19:20  unknown-name
        circuits.ramp.equations.t.is: found the name \`sense.R_tpo\`; expected a symbol of this circuit, a condition of the board, or \`circuit.symbol\`.
        18 |     equations:
        19 |       t: { is: C * sense.R_tpo, unit: s, says: Time }
           |                    ^^^^^^^^^^^
        Did you mean \`sense.R_top\`?"
    `);
  });
  test('a symbol that the method does not know', () => {
    expect(messagesFor(divider({ R_tpo: '1 kohm' }))).toMatchInlineSnapshot(`
      "spec.yaml:16:7  unknown-key
        circuits.sense.given.R_tpo: found the key \`R_tpo\`; expected one of \`V_in\`, \`R_top\`, \`R_bot\`, \`C_f\`, \`V_fs\`, \`N_adc\`, \`I_leak\`, \`k_leak\`, \`P_r\`, \`V_r\`.
        15 |       V_fs: 3.3 V
        16 |       R_tpo: 1 kohm
           |       ^^^^^
        Did you mean \`R_top\`?"
    `);
  });
  test('a missing value', () => {
    expect(messagesFor(divider({ V_fs: '' }))).toMatchInlineSnapshot(`
      "spec.yaml:10:5  missing-value
        circuits.sense.given.V_fs: found no value for \`V_fs\` (Converter full scale); expected a voltage in V, such as \`3.3 V\`.
         9 |     method: voltage-divider
        10 |     given:
           |     ^^^^^
        Add \`V_fs:\` under \`given\` of \`sense\`; there is no safe value to assume."
    `);
  });
  test('an unknown method', () => {
    expect(messagesFor('circuits:\n  sense:\n    method: voltage-divder\n')).toMatchInlineSnapshot(`
      "spec.yaml:9:13  unknown-method
        circuits.sense.method: found the method \`voltage-divder\`; expected a method of the handbook; \`npm run new -- --list\` shows them.
        8 |   sense:
        9 |     method: voltage-divder
          |             ^^^^^^^^^^^^^^
        Did you mean \`voltage-divider\`?"
    `);
  });
  test('a loop of references', () => {
    expect(
      messagesFor(
        'circuits:\n  a:\n    given: { x: b.y }\n    equations:\n      y: { is: x + 1 V, unit: V, says: One }\n  b:\n    given: { x: a.y }\n    equations:\n      y: { is: x + 1 V, unit: V, says: Two }\n',
      ),
    ).toMatchInlineSnapshot(`
      "spec.yaml:9:17  loop
        circuits.a.given.x: found a loop: \`a.x\` needs \`b.y\` needs \`b.x\` needs \`a.y\` needs \`a.x\`; expected equations that can be worked out one after another.
        8 |   a:
        9 |     given: { x: b.y }
          |                 ^^^
        Solve the loop for one of its symbols and write that equation instead."
    `);
  });
  test('a key that stands twice', () => {
    expect(messagesFor('conditions:\n  I_ph: 1 A to 2 A\n  I_ph: 1 A to 3 A\n')).toMatchInlineSnapshot(`
      "spec.yaml:9:3  yaml-duplicate-key
        found the key \`I_ph\` a second time; expected each key once.
        8 |   I_ph: 1 A to 2 A
        9 |   I_ph: 1 A to 3 A
          |   ^
        Remove one of the two, or give it another name."
    `);
  });
  test('a tab', () => {
    expect(messagesFor('conditions:\n\tI_ph: 1 A to 2 A\n')).toMatchInlineSnapshot(`
      "spec.yaml:8:1  yaml-tab
        found a tab; expected spaces for indentation.
        7 | conditions:
        8 | ␉I_ph: 1 A to 2 A
          | ^
        Replace the tab by two spaces for each level."
    `);
  });
  test('units that disagree in an equation', () => {
    expect(
      messagesFor(
        'circuits:\n  a:\n    given: { V: 3 V, I: 2 A }\n    equations:\n      x: { is: V + I, unit: V, says: Sum }\n',
      ),
    ).toMatchInlineSnapshot(`
      "spec.yaml:11:20  units-disagree
        circuits.a.equations.x.is: found \`I\`, a current; expected a voltage, as \`V\` is.
        10 |     equations:
        11 |       x: { is: V + I, unit: V, says: Sum }
           |                    ^"
    `);
  });
  test('a result whose unit does not fit', () => {
    expect(
      messagesFor(
        'circuits:\n  a:\n    given: { V: 3 V, I: 2 A }\n    equations:\n      x: { is: V * I, unit: V, says: Power }\n',
      ),
    ).toMatchInlineSnapshot(`
      "spec.yaml:11:16  units-disagree
        circuits.a.equations.x.is: found an expression that comes to a power; expected a voltage, since its unit is V.
        10 |     equations:
        11 |       x: { is: V * I, unit: V, says: Power }
           |                ^^^^^"
    `);
  });
  test('a tolerance on a condition', () => {
    expect(messagesFor('conditions:\n  I_ph: 1 A ±5 %\n')).toMatchInlineSnapshot(`
      "spec.yaml:8:9  not-a-range
        conditions.I_ph: found \`1 A ±5 %\`; expected a range to endure, such as \`-10 degC to 45 degC typ 25 degC\`.
        7 | conditions:
        8 |   I_ph: 1 A ±5 %
          |         ^^^^^^^^
        A tolerance belongs to a part; a condition is endured from end to end."
    `);
  });
  test('an unknown key', () => {
    expect(messagesFor('condtions:\n  I_ph: 1 A to 2 A\n')).toMatchInlineSnapshot(`
      "spec.yaml:7:1  unknown-key
        condtions: found the key \`condtions\`; expected one of \`board\`, \`document\`, \`revision\`, \`supersedes\`, \`issued\`, \`status\`, \`purpose\`, \`owner\`, \`department\`, \`designer\`, \`approver\`, \`classification\`, \`language\`, \`supplement\`, \`conditions\`, \`cases\`, \`margins\`, \`requirements\`, \`circuits\`, \`deviations\`, \`decisions\`, \`actions\`, \`review\`, \`safety\`, \`cautions\`.
        6 | purpose: Raises and lowers a work table.
        7 | condtions:
          | ^^^^^^^^^
        Did you mean \`conditions\`?"
    `);
  });
  test('a value that a comma cut in two', () => {
    expect(
      messagesFor(
        'circuits:\n  a:\n    given: { R_a: 1 kohm, R_b: 2 kohm }\n    equations:\n      R: { is: parallel(R_a, R_b), unit: ohm, says: Both }\n',
      ),
    ).toMatchInlineSnapshot(`
      "spec.yaml:11:30  unknown-key
        circuits.a.equations.R.R_b): found the key \`R_b)\`; expected one of \`is\`, \`unit\`, \`says\`, \`source\`, \`heat\`, \`stored\`, \`load\`, \`hazard\`.
        10 |     equations:
        11 |       R: { is: parallel(R_a, R_b), unit: ohm, says: Both }
           |                              ^^^^
        A comma inside a one-line mapping ends the value: quote the text, or write it on lines of its own."
    `);
  });
  test('a drift without any ambient temperature', () => {
    expect(messagesFor('circuits:\n  a:\n    given: { R_a: 1 kohm ±1 % ±100 ppm/K }\n')).toMatchInlineSnapshot(`
      "spec.yaml:9:19  no-temperature
        circuits.a.given.R_a: found \`R_a\` drifts with temperature, but the board has no condition \`T_amb\`; expected an ambient range to endure.
        8 |   a:
        9 |     given: { R_a: 1 kohm ±1 % ±100 ppm/K }
          |                   ^^^^^^^^^^^^^^^^^^^^^^
        Add \`T_amb: -10 degC to 45 degC typ 25 degC\` under \`conditions\`, or \`temperature:\` to \`a\`."
    `);
  });
  test('a check that a requirement names and nobody has', () => {
    expect(
      messagesFor(`requirements:\n  REQ-1: { says: It measures., shown by: sense.fullscale }\n${divider()}`),
    ).toMatchInlineSnapshot(`
      "spec.yaml:8:42  unknown-check
        requirements.REQ-1.shown by: found \`sense.fullscale\`; expected a check such as \`stage.junction\`, or all checks of a circuit such as \`stage.*\`.
        7 | requirements:
        8 |   REQ-1: { says: It measures., shown by: sense.fullscale }
          |                                          ^^^^^^^^^^^^^^^
        Did you mean \`sense.full_scale\`?"
    `);
  });
});

test('all problems of a file come at once, in the order of the file', () => {
  const text = divider({ R_top: '100 kV', R_bot: '10 kohn', C_f: '10 nF +-10' });
  expect(read(spec(text)).problems.map(({ line, code }) => [line, code])).toEqual([
    [12, 'wrong-unit'],
    [13, 'unknown-unit'],
    [14, expect.any(String)],
  ]);
});

test('a spec without problems has a board, one with any has none', () => {
  expect(read(spec(divider())).board?.circuits).toHaveLength(1);
  expect(read(spec(divider({ V_fs: '' }))).board).toBeUndefined();
});

test('a test point that reads nothing, or is fed by nothing', () => {
  const points = '    test points:\n      tap: { read: V_uot, when: { V_inn: 12 V } }\n';
  expect(read(spec(divider() + points)).problems.map(({ code, key, hint }) => [code, key, hint])).toEqual([
    ['unknown-name', 'circuits.sense.test points.tap.read', 'Did you mean `V_out`?'],
    ['unknown-name', 'circuits.sense.test points.tap.when.V_inn', 'Did you mean `V_in`?'],
  ]);
});
