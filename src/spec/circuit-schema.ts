import { z } from 'zod';

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
  /** The value: a quantity, a reference or an expression. */
  is: typed,
  /** Where the number comes from: `maker's data sheet, rev. 4, p. 7`. */
  from: sentence.optional(),
  /** How far it can be relied on. What is only typical or assumed is listed in the packet. */
  basis: z.enum(bases).optional(),
  /** A matched part: `R_top within 0.1 %`. */
  tracks: typed.optional(),
  /** What it is, where no method says so. */
  says: sentence.optional(),
  /** Hazard quantity that this value feeds. */
  hazard: symbolName.optional(),
});
export const given = z.union([typed.transform((is): z.output<typeof longValue> => ({ is })), longValue]);

export const equation = z.strictObject({
  /** The right side. */
  is: typed,
  /** Unit in which the result is printed. */
  unit: typed,
  /** What the result is; reads as a heading before the equation. */
  says: sentence,
  /** Key of `sources`, or the source in words. */
  source: sentence.optional(),
  /** Counts as heat of the board. */
  heat: flag.optional(),
  /** Counts as energy stored on the board. */
  stored: flag.optional(),
  /** Name of the supply rail that this load is drawn from. */
  load: symbolName.optional(),
  /** Hazard quantity that this result feeds, such as `E_cap`; the safety cautions read it. */
  hazard: symbolName.optional(),
});

export const check = z.strictObject({
  /** `left <= right` or `left >= right`; the right side is the limit. */
  holds: typed,
  /** Why it must hold. */
  because: sentence,
  source: sentence.optional(),
});

/** Thresholds that must stay in this order on every board: `rising: [V_uv, bus.V_bus, V_ov]`. */
export const order = z.strictObject({
  /** Two or more results, inputs or expressions, lowest first. */
  rising: z.array(typed).min(2),
  /** Why the order must hold. */
  because: sentence,
  source: sentence.optional(),
});

export const firmware = z.union([
  typed.transform((is): { is: string; unit?: string | undefined; says?: string | undefined } => ({ is })),
  z.strictObject({ is: typed, unit: typed.optional(), says: sentence.optional() }),
]);

/** Stages of bringing a board up, each behind a hold point; the later, the more can go wrong. */
export const benchSteps = ['cold', 'supply', 'pack', 'motor', 'load'] as const;

export const testPoint = z.strictObject({
  /** The result that is measured there. */
  read: typed,
  /** Conditions of the measurement: condition or symbol, and the value it is set to. */
  when: z.record(z.string(), typed).optional(),
  says: sentence.optional(),
  /** Stage at which it is read; `load` where a current of 1 A or more flows, else `supply`. */
  step: z.enum(benchSteps).optional(),
  /** Half-width at 95 % of the whole measurement: `5 mV`, or `0.5 %` of what is expected. */
  uncertainty: typed.optional(),
});
export type TestPointSpec = z.output<typeof testPoint>;

export const plot = z.strictObject({
  of: symbolName,
  over: typed,
  limit: z.string().optional(),
  says: sentence.optional(),
});

/** What a circuit and a method have in common: the equations and what hangs on them. */
export const equationParts = {
  equations: z.record(symbolName, equation).optional(),
  checks: z.record(symbolName, check).optional(),
  /** Says when the equations hold; a board outside carries a mark. */
  valid: z.record(symbolName, check).optional(),
  /** Thresholds in rising order; each is checked against the next. */
  order: z.record(symbolName, order).optional(),
  firmware: z.record(z.string().regex(/^[A-Z][A-Z0-9_]*$/), firmware).optional(),
  'test points': z.record(symbolName, testPoint).optional(),
  plots: z.array(plot).optional(),
  cautions: z.array(z.unknown()).optional(),
  drawing: z.unknown().optional(),
};

export const circuit = z.strictObject({
  title: sentence.optional(),
  /** Name of a method of the handbook. */
  method: z.string().optional(),
  /** Designators on the schematic: symbol, and `R31` or `Q1 Q2`. */
  refs: z.record(symbolName, sentence).optional(),
  given: z.record(symbolName, given).optional(),
  /** How many alike stand on the board; each is drawn by itself in simulation. */
  count: z
    .string()
    .regex(/^[1-9][0-9]{0,2}$/)
    .transform(Number)
    .optional(),
  /** Temperature that the parts' drifts follow; ambient if silent. */
  temperature: typed.optional(),
  /** Why these parts. */
  why: sentence.optional(),
  sources: z.record(z.string(), sentence).optional(),
  ...equationParts,
});
export type CircuitSpec = z.output<typeof circuit>;
export type GivenSpec = z.output<typeof given>;
export type CheckSpec = z.output<typeof check>;
export type OrderSpec = z.output<typeof order>;
