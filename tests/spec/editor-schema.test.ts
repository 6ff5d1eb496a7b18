import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { starterSpec } from '../../src/commands/starter-spec.ts';
import { readDesigns } from '../../src/site/designs.ts';
import { loadSafety } from '../../src/site/safety-files.ts';
import { schemaText } from '../../src/site/schema-file.ts';
import type { JsonSchema } from '../../src/spec/editor-schema.ts';
import { handbook } from '../handbook.ts';
import { spec } from './spec-text.ts';

const file = new URL('../../spec.schema.json', import.meta.url);
const text = readFileSync(file, 'utf8');
const schema = JSON.parse(text) as JsonSchema;
// In strict mode, so that a keyword that no validator knows is found here and not in an editor.
const validate = new Ajv({ strict: true, allErrors: true, strictTypes: false, strictRequired: false }).compile(schema);

/** What an editor would underline, with the YAML read both as this tool reads it and as editors do. */
function complaints(yaml: string): string[] {
  return (['failsafe', 'core'] as const).flatMap((reading) => {
    if (validate(parse(yaml, { schema: reading }))) return [];
    return validate.errors!.map(({ instancePath, message }) => `${instancePath} ${message}`);
  });
}

test('the file at the root is as fresh as the handbook and the safety tables: npm run schema', () => {
  expect(text === schemaText(handbook, loadSafety())).toBe(true);
});

const designs = readDesigns(new URL('../../designs', import.meta.url).pathname);
const specs: [string, string][] = designs.map((one) => [`${one.board}/${one.revision}`, one.files.get('spec.yaml')!]);

test.each([...specs, ['the starter', starterSpec('my-board', '2026-01-01')]])('%s is accepted', (_, yaml) => {
  expect(complaints(yaml)).toEqual([]);
});

test.each(specs)('%s names the schema in its first line', (_, yaml) => {
  expect(yaml.split('\n')[0]).toBe('# yaml-language-server: $schema=../../../spec.schema.json');
});

test('the example of every method is accepted', () => {
  for (const { id, example } of handbook.methods.values()) {
    const given = Object.entries(example.given).map(([name, value]) => `      ${name}: ${JSON.stringify(value)}\n`);
    const yaml = spec(`circuits:\n  it:\n    method: ${id}\n    given:\n${given.join('')}`);
    expect([id, ...complaints(yaml)]).toEqual([id]);
  }
});

describe('an editor is told of', () => {
  const wrong: Record<string, [string, RegExp]> = {
    'an unknown key': ['condtions: {}\n', /must NOT have additional properties/],
    'an unknown method': ['circuits:\n  a: { method: voltage-divder }\n', /must be equal to constant/],
    'a symbol that is not given': [
      'circuits:\n  a: { method: voltage-divider, given: { V_in: 3 V } }\n',
      /\/circuits\/a\/given must have required property 'R_top'/,
    ],
    'a status that is none': ['status: finished\n', /must be equal to one of the allowed values/],
    'a fact that is no yes or no': [
      'safety: { has_pack: perhaps }\n',
      /\/safety\/has_pack must be equal to one of the allowed values/,
    ],
  };
  test.each(Object.entries(wrong))('%s', (_, [yaml, message]) => {
    const whole = yaml.startsWith('status') ? spec('').replace(/^status:.*\n/m, yaml) : spec(yaml);
    expect(complaints(whole).join('\n')).toMatch(message);
  });
});

test('every key has a sentence and an example', () => {
  const silent: string[] = [];
  let told = 0;
  const visit = (node: unknown, path: string): void => {
    if (typeof node !== 'object' || node === null) return;
    for (const [key, value] of Object.entries(node)) {
      if (key === 'examples' || key === 'if') continue;
      if (key === 'then') {
        // The keys of a circuit are told of where circuits are; below them stand the method's symbols.
        for (const part of Object.values((value as JsonSchema).properties as object)) visit(part, `${path}/then`);
      } else if (key === 'properties') {
        for (const [name, one] of Object.entries(value as Record<string, JsonSchema>)) {
          const { description, examples } = one;
          if (String(description ?? '').length > 3 && Array.isArray(examples) && examples.length > 0) told++;
          else silent.push(`${path}/${name}`);
          visit(one, `${path}/${name}`);
        }
      } else visit(value, path);
    }
  };
  visit(schema, '');
  expect(silent).toEqual([]);
  expect(told).toBeGreaterThan(1000);
});

test('a method shows its symbols with what they are, and their units', () => {
  const circuits = (schema.properties as Record<string, JsonSchema>).circuits!.additionalProperties as JsonSchema;
  const methods = circuits.allOf as { if: unknown; then: { properties: Record<string, JsonSchema> } }[];
  const divider = methods.find((one) => JSON.stringify(one.if).includes('"voltage-divider"'))!;
  const symbols = divider.then.properties.given!.properties as Record<string, JsonSchema>;
  expect(symbols.R_top).toEqual({
    description: 'Upper resistor (resistance in ohm; part: resistor)',
    examples: ['150 kohm'],
  });
  expect(symbols.N_adc!.description).toBe('Bits of the converter (a pure number; usual: 12)');
});
