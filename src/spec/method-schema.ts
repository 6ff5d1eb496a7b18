import { z } from 'zod';
import { equationParts, symbolName } from './circuit-schema.ts';

const sentence = z.string().trim().min(1);

export const partKinds = [
  'resistor',
  'capacitor',
  'inductor',
  'mosfet',
  'diode',
  'ic',
  'fuse',
  'connector',
  'wire',
  'crystal',
  'thermistor',
  'copper',
  'heatsink',
  'motor',
  'battery',
  'switch',
  'sensor',
] as const;

/** One symbol of a method: what it stands for, without its number. */
export const methodSymbol = z.strictObject({
  says: sentence,
  unit: sentence,
  part: z.enum(partKinds).optional(),
  /** Taken where a spec is silent; the packet lists it under assumptions. */
  usual: sentence.optional(),
  /** Where the usual value comes from. */
  from: sentence.optional(),
  /** A rating (voltage, power, current) and not a value: it may be higher than asked for. */
  rating: z
    .enum(['true', 'false'])
    .transform((text) => text === 'true')
    .optional(),
  /** Hazard quantity that this value feeds, such as `V_bus_rating`; the safety cautions read it. */
  hazard: symbolName.optional(),
});

/** A page of the handbook: a circuit without its numbers. */
export const methodSchema = z.strictObject({
  title: sentence,
  sizes: sentence,
  'holds when': sentence,
  symbols: z.record(symbolName, methodSymbol),
  ...equationParts,
  /** Values to look for among the preferred ones: at most two symbols, the result they set, and what it should be. */
  proposes: z
    .record(symbolName, z.strictObject({ choose: z.array(symbolName).min(1).max(2), of: symbolName, target: sentence }))
    .optional(),
  sources: z.record(z.string(), sentence),
  example: z.strictObject({
    given: z.record(symbolName, sentence),
    gives: z.record(z.string(), sentence),
    from: sentence.optional(),
  }),
});
export type MethodSpec = z.output<typeof methodSchema>;

/** A method with the name of its file and the folder that says where on the board it sits. */
export interface Method extends MethodSpec {
  readonly id: string;
  readonly place: string;
}

export const policySchema = z.strictObject({
  title: sentence,
  says: sentence,
  factors: z.record(
    symbolName,
    z.strictObject({
      is: sentence,
      says: sentence,
      source: sentence,
      known: z.enum(['read', 'memory', 'common practice', 'own']).optional(),
    }),
  ),
  sources: z.record(z.string(), sentence),
});
export interface Policy extends z.output<typeof policySchema> {
  readonly id: string;
}

/** Everything a spec may refer to: methods and derating policies by name. */
export interface Handbook {
  readonly methods: ReadonlyMap<string, Method>;
  readonly policies: ReadonlyMap<string, Policy>;
}
