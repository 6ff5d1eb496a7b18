import type { CautionFinding } from '../analysis/findings.ts';
import { inUnit, printedUnit } from '../analysis/units.ts';
import type { Caution } from './cautions-of.ts';
import { settled } from './settled.ts';
import type { Solved } from './solve.ts';

/**
 * A shown caution as results.json has it: the numbers of the comparisons that raised it, all in one unit, the first one's;
 * null for
 * what is unknown. Where no number raised it, the facts that did, as 1 and 0. Infinite numbers and those in other units are
 * left out.
 */
export function findingOf({ id, level, tests }: Caution, { values }: Solved): CautionFinding {
  const named = tests.flatMap(({ symbols, truth }) =>
    symbols.map((name) => ({ name, truth, value: values.get(name) })),
  );
  const unknown = named.filter(({ truth, value }) => (value ? value.state === 'unknown' : truth === 'unknown'));
  const facts = named
    .filter(({ truth, value }) => !value && truth !== 'unknown')
    .map(({ name, truth }) => [name, truth === 'yes' ? 1 : 0] as const);
  const numbers = named.flatMap(({ name, value }) =>
    value?.state === 'known'
      ? [{ name, unit: printedUnit(value.quantity.unit), number: inUnit(value.range.lo, value.quantity.unit) }]
      : [],
  );
  const unit = numbers[0]?.unit ?? '1';
  const alike = numbers.filter((one) => one.unit === unit).map(({ name, number }) => [name, settled(number)] as const);
  return {
    id,
    level,
    because: Object.fromEntries([
      ...(alike.length ? alike : facts),
      ...unknown.map(({ name }) => [name, null] as const),
    ]),
    unit,
  };
}
