import { find } from '../../src/analysis/find.ts';
import type { Findings } from '../../src/analysis/findings.ts';
import { boardFrom } from '../spec/spec-text.ts';

/** What is found about a spec; `rest` follows the keys that every spec needs. */
export const found = (rest: string, options: { seed?: number; trials?: number } = {}): Findings =>
  find(boardFrom(rest), { seed: 1, trials: 2000, digest: '0'.repeat(64), tool: 'test', ...options });

/** One circuit of equations written in place, named `x`. */
export function circuit(
  given: Record<string, string>,
  equations: Record<string, [is: string, unit: string]>,
  checks: Record<string, string> = {},
): string {
  const lines = [
    'circuits:',
    '  x:',
    '    given:',
    ...Object.entries(given).map(([name, value]) => `      ${name}: ${value}`),
    '    equations:',
    ...Object.entries(equations).map(
      ([name, [is, unit]]) => `      ${name}: { is: "${is}", unit: "${unit}", says: ${name} }`,
    ),
    ...(Object.keys(checks).length
      ? [
          '    checks:',
          ...Object.entries(checks).map(([name, holds]) => `      ${name}: { holds: "${holds}", because: test }`),
        ]
      : []),
  ];
  return `${lines.join('\n')}\n`;
}
