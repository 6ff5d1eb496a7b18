import { z } from 'zod';
import { describeDimension, parseUnit } from '../quantity/units.ts';
import type { Handbook, Method } from './method-schema.ts';
import { specSchema } from './spec-schema.ts';

/** A name that stands in a table outside the handbook, such as a fact of the safety tables; without a unit it is yes or no. */
export interface EditorName {
  readonly name: string;
  readonly says: string;
  readonly unit?: string;
}

/** A node of a JSON Schema. */
export type JsonSchema = { [key: string]: unknown };

/**
 * JSON Schema (draft 7) of a spec, for editors that complete and warn while YAML is typed: every key with a sentence and an
 * example, and for each method its symbols with their units. It refuses nothing that `readSpec` accepts; what names mean and
 * whether units agree is beyond it.
 * @param facts  names that may stand under `safety:`
 * @param cautions  ids that may stand under `cautions:`
 * @see https://json-schema.org/draft-07/json-schema-validation
 */
export function editorSchema(
  { methods, policies }: Handbook,
  facts: readonly EditorName[],
  cautions: readonly EditorName[],
): JsonSchema {
  const plain = z.toJSONSchema(specSchema, { io: 'input', target: 'draft-7', override: withExamples });
  const { $schema, ...root } = asEditorsRead(plain);
  const keys = keysOf(root);
  const circuit = keys.circuits!.additionalProperties as JsonSchema;
  const sorted = [...methods.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  keysOf(circuit).method!.anyOf = sorted.map(({ id, title }) => ({ const: id, description: title }));
  circuit.allOf = sorted.map(ofMethod);
  const [policy, own] = keysOf(keys.margins!).derating!.anyOf as [JsonSchema, JsonSchema];
  policy.anyOf = [...policies.values()].map(({ id, title }) => ({ const: id, description: title }));
  own.description = 'Factors of your own; where it is silent, the commercial policy stands in.';
  keys.safety!.properties = Object.fromEntries(facts.map((fact) => [fact.name, ofFact(fact)]));
  keys.cautions!.properties = Object.fromEntries(
    cautions.map(({ name, says }) => [name, { description: says, examples: [{ level: 'danger' }] }]),
  );
  return { $schema, title: 'Spec of one board revision', ...root };
}

/** Where a value is transformed when it is read, zod leaves its examples out; they are what is typed, so they hold. */
function withExamples({ zodSchema, jsonSchema }: { zodSchema: z.core.$ZodTypes; jsonSchema: JsonSchema }): void {
  const examples = z.globalRegistry.get(zodSchema)?.examples;
  if (examples !== undefined) jsonSchema.examples = examples;
}

const keysOf = (schema: JsonSchema): Record<string, JsonSchema> => schema.properties as Record<string, JsonSchema>;

/**
 * Specs are read with every scalar as text, editors read `10` as a number and `true` as a truth: wherever free text may stand,
 * they may stand too. Names of keys stay text.
 */
function asEditorsRead(node: unknown): JsonSchema {
  return walk(node) as JsonSchema;
}

function walk(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(walk);
  if (typeof node !== 'object' || node === null) return node;
  const entries = Object.entries(node).map(([key, value]) => [
    key,
    key === 'examples' || key === 'propertyNames' ? value : walk(value),
  ]);
  const schema = Object.fromEntries(entries) as JsonSchema;
  if (schema.type !== 'string') return schema;
  const { type: _, ...rest } = schema;
  if (String(schema.enum) === 'true,false') return { ...rest, enum: ['true', 'false', true, false] };
  return schema.enum || schema.const ? schema : { ...rest, type: ['string', 'number', 'boolean'] };
}

/** What a circuit holds when it names this method. */
function ofMethod(method: Method): JsonSchema {
  const symbols = Object.entries(method.symbols);
  const needed = symbols.filter(([, { usual }]) => usual === undefined).map(([name]) => name);
  const parts = symbols.filter(([, { part }]) => part !== undefined);
  const given: JsonSchema = {
    properties: Object.fromEntries(symbols.map(([name]) => [name, ofSymbol(method, name)])),
    ...(needed.length ? { required: needed } : {}),
  };
  const refs: JsonSchema = {
    properties: Object.fromEntries(
      parts.map(([name, { says }]) => [name, { description: `Designator of ${says}`, examples: ['R1'] }]),
    ),
  };
  return {
    if: { properties: { method: { const: method.id } }, required: ['method'] },
    // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
    then: {
      description: method.sizes,
      properties: { given, ...(parts.length ? { refs } : {}) },
      ...(needed.length ? { required: ['given'] } : {}),
    },
  };
}

function ofSymbol({ symbols, example }: Method, name: string): JsonSchema {
  const { says, unit, usual, part, rating } = symbols[name]!;
  const kind = describeDimension(parseUnit(unit).dimension);
  const notes = [
    unit === '1' ? 'a pure number' : `${kind} in ${unit}`,
    ...(part ? [`part: ${part}`] : []),
    ...(rating ? ['a rating'] : []),
    ...(usual === undefined ? [] : [`usual: ${usual}`]),
  ];
  return { description: `${says} (${notes.join('; ')})`, examples: [example.given[name] ?? usual ?? `1 ${unit}`] };
}

const ofFact = ({ says, unit }: EditorName): JsonSchema =>
  unit === undefined
    ? { description: says, enum: ['yes', 'no', 'unknown', 'true', 'false', true, false], examples: ['yes'] }
    : { description: says, examples: [`1 ${unit}`] };
