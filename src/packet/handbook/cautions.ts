import { namesIn } from '../../safety/names-in.ts';
import type { CautionRule, SafetyData } from '../../safety/safety-data.ts';
import type { Method } from '../../spec/method-schema.ts';
import type { Table } from '../block.ts';
import { sans, serif, wide } from '../chapters/columns.ts';
import { joined, link, strong } from '../inline.ts';
import type { Text } from '../text.ts';

/** Safety cautions that look at numbers of a method, each with the numbers it looks at. */
export function cautionsTable(method: Method, safety: SafetyData, number: string): Table | undefined {
  const fed = feeds(method);
  const rows = safety.cautions.flatMap((caution) => {
    const symbols = [...lookedAt(caution, safety)].flatMap((tag) => fed.get(tag) ?? []);
    if (!symbols.length) return [];
    const by = joined(
      [...new Set(symbols)].map((symbol): Text => [link(symbol, symbol)]),
      ', ',
    );
    return [{ cells: [[caution.id], [strong(caution.level.toUpperCase())], [caution.hazard], by] }];
  });
  if (!rows.length) return undefined;
  return {
    kind: 'table',
    id: 'table-cautions',
    number,
    caption: ['Cautions that look at numbers of this circuit; a packet shows those that its own numbers call for.'],
    columns: [
      wide(sans('Caution'), 0.1),
      wide(sans('Signal word'), 0.15),
      wide(serif('Hazard'), 0.5),
      wide(sans('Looks at'), 0.25),
    ],
    groups: [{ rows }],
    wide: true,
  };
}

/** Symbols of a method by the hazard quantity that they feed. */
function feeds({ symbols, equations = {} }: Method): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const [symbol, { hazard }] of [...Object.entries(symbols), ...Object.entries(equations)])
    if (hazard) found.set(hazard, [...(found.get(hazard) ?? []), symbol]);
  return found;
}

/** Names under which circuits feed what a caution's trigger looks at, itself or through what it is found from. */
function lookedAt({ trigger }: CautionRule, { quantities }: SafetyData): Set<string> {
  const tags = new Set<string>();
  const open = trigger ? [...namesIn(trigger)] : [];
  const seen = new Set(open);
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    const quantity = quantities.get(name);
    if (!quantity) continue;
    tags.add(quantity.tag);
    const more = quantity.equals ? [...namesIn(quantity.equals)] : [];
    for (const other of more) {
      if (!seen.has(other)) open.push(other);
      seen.add(other);
    }
  }
  return tags;
}
