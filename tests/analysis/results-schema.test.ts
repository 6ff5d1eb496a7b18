import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { find } from '../../src/analysis/find.ts';
import { resultsSchema } from '../../src/analysis/results-schema.ts';
import { readDesigns } from '../../src/site/designs.ts';
import { readSpec } from '../../src/spec/read-spec.ts';
import { handbook } from '../handbook.ts';
import { circuit, found } from './found.ts';

const valid = new Ajv2020({ strict: false, allErrors: true }).compile(resultsSchema());
/** As results.json is read back: what JSON cannot say is gone or null. */
const faults = (findings: object): unknown => {
  valid(JSON.parse(JSON.stringify(findings)));
  return valid.errors ?? [];
};

describe('results.json of every demo board fits its schema', () => {
  test.each(readDesigns('designs').map((design) => [`${design.board}/${design.revision}`, design] as const))(
    '%s',
    (file, { board: name, revision, files }) => {
      const { board } = readSpec(files.get('spec.yaml')!, { file, board: name, revision }, handbook);
      const findings = find(board!, { seed: 1, trials: 500, digest: '0'.repeat(64), tool: 'test' });
      expect(faults(findings)).toEqual([]);
    },
    60_000,
  );
});

test('a board with a check that cannot be assessed fits too', () => {
  const findings = found(circuit({ a: '-1 to 3 typ 1' }, { y: ['sqrt(a)', '1'] }, { c: 'y <= 2' }));
  expect(findings.checks[0]).toMatchObject({ verdict: 'not assessed' });
  expect(faults(findings)).toEqual([]);
});

test.each([
  ['a key is missing', ({ ranking: _, ...rest }: Record<string, unknown>) => rest],
  ['a verdict is a word of its own', (all: Record<string, unknown>) => ({ ...all, verdict: 'fine' })],
  ['a number is a text', (all: Record<string, unknown>) => ({ ...all, trials: '500' })],
])('it refuses results where %s', (_, spoil) => {
  const findings = found(circuit({ R: '10 ohm ±1 %' }, { y: ['2 * R', 'ohm'] }, { c: 'y <= 30 ohm' }));
  expect(faults(findings)).toEqual([]);
  expect(faults(spoil({ ...findings }))).not.toEqual([]);
});
