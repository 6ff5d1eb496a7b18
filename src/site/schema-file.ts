import type { SafetyData } from '../safety/safety-data.ts';
import { type EditorName, editorSchema } from '../spec/editor-schema.ts';
import type { Handbook } from '../spec/method-schema.ts';

/** Name of the file with the editor's schema, at the root of this project and of any designs folder elsewhere. */
export const schemaName = 'spec.schema.json';

/** The editor's schema of a spec as it stands in its file: names of methods, of facts and of cautions filled in. */
export function schemaText(handbook: Handbook, { flags, quantities, cautions }: SafetyData): string {
  const tags = new Map([...quantities.values()].map((one) => [one.tag, one]));
  const facts: EditorName[] = [
    ...[...flags.values()].map(({ symbol, yes }) => ({ name: symbol, says: `Whether ${yes}` })),
    ...[...tags].map(([name, { says, unit }]) => ({ name, says, unit: unit.text })),
  ];
  const schema = editorSchema(
    handbook,
    facts,
    cautions.map(({ id, hazard }) => ({ name: id, says: hazard })),
  );
  return `${JSON.stringify(schema, null, 1)}\n`;
}
