import { describe, expect, test } from 'vitest';
import { handbook } from '../handbook.ts';

const policies = [...handbook.policies.values()];

// What they allow of a rating is held against published tables in src/published/data/policies.yaml.
describe('derating policies', () => {
  test('every policy has the same factors, so that a method can name any of them', () => {
    const [first, ...others] = policies.map(({ factors }) => Object.keys(factors).sort());
    expect(first?.length).toBeGreaterThan(0);
    for (const names of others) expect(names).toEqual(first);
  });

  test('every factor names a source of its policy, and how it is known', () => {
    for (const { id, factors, sources } of policies) {
      for (const [name, { source, known }] of Object.entries(factors)) {
        expect(Object.keys(sources), `${id}.${name}`).toContain(source);
        expect(known, `${id}.${name}`).toBeDefined();
      }
    }
  });
});
