import { z } from 'zod';
import { described } from './described.ts';

/** Text of a quantity, a reference or an expression, as typed; read after the shape of the file is known to be right. */
const typed = z.string().trim().min(1);
/** A plain sentence. */
const sentence = z.string().trim().min(1);
/** A name in equations: a letter, then letters, digits, underscores. */
export const symbolName = z.string().regex(/^[A-Za-zα-ωΑ-Ω_][A-Za-z0-9α-ωΑ-Ω_]*$/, 'name');
const flag = z.enum(['true', 'false']).transform((text) => text === 'true');

export const bases = ['guaranteed', 'measured', 'typical', 'assumed'] as const;

/** A value written long, with its origin. */
const longValue = z.strictObject({
  is: described(
    typed,
    'The value: a quantity, a reference or an expression.',
    '0.5 mohm ±1 % ±75 ppm/K',
    'pack.V_bat',
    '2 * V_drv',
  ),
  from: described(sentence.optional(), 'Where the number comes from.', "maker's data sheet, rev. 4, p. 7"),
  basis: described(
    z.enum(bases).optional(),
    'How far it can be relied on. What is only typical or assumed is listed in the packet.',
    'guaranteed',
  ),
  tracks: described(
    typed.optional(),
    'A matched part: its ratio to another part of this circuit stays within a tolerance.',
    'R_top within 0.1 %',
  ),
  says: described(sentence.optional(), 'What it is, where no method says so.', 'Current limit of the converter'),
  hazard: described(symbolName.optional(), 'Hazard quantity of the safety cautions that this value feeds.', 'V_max'),
});
export const given = z.union([typed.transform((is): z.output<typeof longValue> => ({ is })), longValue]);

export const equation = z.strictObject({
  is: described(
    typed,
    'The right side of the equation, over symbols of this circuit, conditions, and `circuit.symbol` of others.',
    'C_ss * V_ref / I_ss',
  ),
  unit: described(typed, 'Unit in which the result is printed; 1 for a pure number.', 'ms'),
  says: described(sentence, 'What the result is; reads as a heading before the equation.', 'Ramp time of the output'),
  source: described(sentence.optional(), 'A key of `sources`, or the source in words.', "Ohm's law"),
  heat: described(flag.optional(), 'Counts as heat of the board, and into board.heat.', 'true'),
  stored: described(flag.optional(), 'Counts as energy stored on the board, and into board.stored_energy.', 'true'),
  load: described(
    symbolName.optional(),
    'Supply rail from which this current is drawn: board.load.<rail>. A circuit with `rail` overrides that of its method.',
    'logic',
  ),
  hazard: described(symbolName.optional(), 'Hazard quantity of the safety cautions that this result feeds.', 'E_cap'),
});

export const check = z.strictObject({
  holds: described(
    typed,
    'What must hold on every board, as `left <= right` or `left >= right`; the right side is the limit.',
    't_ss >= 1 ms',
  ),
  because: described(sentence, 'Why it must hold.', 'the converter clips above full scale'),
  source: described(sentence.optional(), 'A key of `sources`, or the source in words.', 'IPC-2221B, table 6-1'),
});

/** Thresholds that must stay in this order on every board: `rising: [V_uv, bus.V_bus, V_ov]`. */
export const order = z.strictObject({
  rising: described(z.array(typed).min(2), 'Two or more results, inputs or expressions, lowest first.', [
    'V_uv',
    'bus.V_bus',
    'V_ov',
  ]),
  because: described(sentence, 'Why the order must hold.', 'a working bus must trip neither protection'),
  source: described(sentence.optional(), 'A key of `sources`, or the source in words.', 'common practice'),
});

export const firmware = z.union([
  typed.transform((is): { is: string; unit?: string | undefined; says?: string | undefined } => ({ is })),
  z.strictObject({
    is: described(typed, 'The constant, over symbols of this circuit.', 'V_fs / 2^N_adc'),
    unit: described(typed.optional(), 'Unit in which it is handed over.', 'mV'),
    says: described(sentence.optional(), 'What it is.', 'Volts of the input per count'),
  }),
]);

/** Stages of bringing a board up, each behind a hold point; the later, the more can go wrong. */
export const benchSteps = ['cold', 'supply', 'pack', 'motor', 'load'] as const;

export const testPoint = z.strictObject({
  read: described(typed, 'Symbol of the result that is measured there.', 'V_out'),
  when: described(
    z.record(z.string(), typed).optional(),
    'Conditions of the measurement: condition or symbol, and the value it is set to.',
    { V_in: '36 V' },
  ),
  says: described(sentence.optional(), 'Where and how to measure.', 'C18, bus fed from a bench supply'),
  step: described(
    z.enum(benchSteps).optional(),
    'Stage at which it is read; `load` where a current of 1 A or more flows, else `supply`.',
    'supply',
  ),
  uncertainty: described(
    typed.optional(),
    'Half-width at 95 % of the whole measurement: a quantity, or a share of what is expected.',
    '5 mV',
    '0.5 %',
  ),
});
export type TestPointSpec = z.output<typeof testPoint>;

export const plot = z.strictObject({
  of: described(symbolName, 'Symbol of the result to draw.', 'V_out'),
  over: described(typed, 'Symbol or condition along the axis.', 'V_in'),
  limit: described(z.string().optional(), 'Name of the check whose limit is drawn.', 'full_scale'),
  says: described(sentence.optional(), 'Caption.', 'Voltage at the converter over the pack voltage'),
});

/** Stations of the power current on its way from the pack to the motor, in order. */
export const stations = ['pack', 'leads', 'connector', 'fuse', 'switch', 'bus', 'bridge', 'shunt', 'copper'] as const;

/** Where a circuit stands in the way of the power current, and which of its symbols tell of it. */
export const path = z.strictObject({
  station: described(z.enum(stations), 'Station on the way from the pack to the motor.', 'fuse'),
  current: described(symbolName, 'Symbol of the current that flows through it.', 'I_rms'),
  heat: described(symbolName.optional(), 'Symbol of the heat that arises in it.', 'P_h'),
  temperature: described(symbolName.optional(), 'Symbol of how hot it gets.', 'T_j'),
});

/** What the circuit looks like: each part is one line, read by `parsePart`. */
export const drawing = z.strictObject({
  says: described(sentence, 'What is drawn, in one sentence.', 'A resistor to ground'),
  parts: described(
    z.array(typed).min(1),
    'One line each: what it is, where its ends lie on the grid, whose designator and value stand beside it.',
    ['resistor 8,4 8,8 R_top'],
  ),
});

/** What a circuit and a method have in common: the equations and what hangs on them. */
export const equationParts = {
  equations: described(
    z.record(symbolName, equation).optional(),
    'Equations written in place, by the symbol of their result.',
    { t_ss: { is: 'C_ss * V_ref / I_ss', unit: 'ms', says: 'Ramp time of the output' } },
  ),
  checks: described(z.record(symbolName, check).optional(), 'What must hold, by name.', {
    ramp: { holds: 't_ss >= 1 ms', because: "a faster ramp trips the supply's current limit" },
  }),
  valid: described(
    z.record(symbolName, check).optional(),
    'Says when the equations hold; a board outside carries a mark.',
    { small: { holds: 'R_leak >= 100 * R_src', because: 'the divider is taken as unloaded' } },
  ),
  order: described(
    z.record(symbolName, order).optional(),
    'Thresholds in rising order, by name; each is checked against the next.',
    { bus: { rising: ['V_uv', 'bus.V_bus', 'V_ov'], because: 'a working bus must trip neither protection' } },
  ),
  firmware: described(
    z.record(z.string().regex(/^[A-Z][A-Z0-9_]*$/, 'constant'), firmware).optional(),
    'Constants handed to firmware, named in capitals.',
    { V_PER_COUNT: 'V_fs / 2^N_adc' },
  ),
  'test points': described(z.record(symbolName, testPoint).optional(), 'Where a result can be measured.', {
    tap: { read: 'V_out', when: { V_in: '36 V' } },
  }),
  plots: described(z.array(plot).optional(), 'Curves of a result.', [
    { of: 'V_out', over: 'V_in', limit: 'full_scale' },
  ]),
  path: described(path.optional(), 'Place in the way of the power current from the pack to the motor.', {
    station: 'bridge',
    current: 'I_rms',
    heat: 'P_leg',
    temperature: 'T_j',
  }),
  drawing: described(drawing.optional(), 'Drawing of the circuit as data: symbols placed on a grid.', {
    says: 'A resistor',
    parts: ['terminal 0,2 V_in', 'resistor 0,2 8,2 R_top', 'ground 8,2'],
  }),
};

export const circuit = z.strictObject({
  title: described(sentence.optional(), 'Heading of its section.', 'Bus voltage to the converter input'),
  method: described(
    z.string().optional(),
    'Name of a method of the handbook; `npm run new -- --list` shows them, `npm run method -- <name>` one of them.',
    'voltage-divider',
  ),
  refs: described(
    z.record(symbolName, sentence).optional(),
    'Designators on the schematic, by symbol: one, several, or a span.',
    { R_top: 'R31', R_sh: 'R41 R42 R43', R_on: 'R51-R56' },
  ),
  given: described(
    z.record(symbolName, given).optional(),
    'What goes in, by symbol: quantities, references to other circuits, expressions.',
    { V_in: 'pack.V_bat', R_top: '150 kohm ±1 % ±100 ppm/K', V_fs: '3.234 / 3.300 / 3.366 V' },
  ),
  count: described(
    z
      .string()
      .regex(/^[1-9][0-9]{0,2}$/, 'count')
      .transform(Number)
      .optional(),
    'How many alike stand on the board; each is drawn by itself in simulation.',
    '3',
  ),
  rail: described(
    symbolName.optional(),
    'Supply rail that what its method marks as a load is drawn from; counts in board.load.<rail>.',
    'v5',
  ),
  temperature: described(
    typed.optional(),
    "Temperature that the parts' drifts follow; the condition T_amb if silent.",
    'T_amb + 15 K',
  ),
  correlations: described(
    z.record(z.string(), typed).optional(),
    'How measured values go together: two symbols, and their correlation coefficient.',
    { 'V with I': '-0.36' },
  ),
  why: described(sentence.optional(), 'Why these parts.', '150 k keeps the standing drain under 0.3 mA.'),
  sources: described(z.record(z.string(), sentence).optional(), 'Sources that equations and checks name by key.', {
    ramp: 'Constant current into a capacitor',
  }),
  ...equationParts,
});
export type CircuitSpec = z.output<typeof circuit>;
export type GivenSpec = z.output<typeof given>;
export type CheckSpec = z.output<typeof check>;
export type OrderSpec = z.output<typeof order>;
