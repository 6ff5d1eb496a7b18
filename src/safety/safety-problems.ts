import { same } from '../quantity/dimension.ts';
import { TextError } from '../quantity/text-problem.ts';
import { describeDimension, parseUnit } from '../quantity/units.ts';
import type { CautionDecision } from '../spec/board.ts';
import type { Problem } from '../spec/problem.ts';
import { Report } from '../spec/report.ts';
import { meant } from '../spec/schema-problems.ts';
import { type Spec, specSchema } from '../spec/spec-schema.ts';
import { readYaml } from '../spec/yaml-file.ts';
import { faultOf } from './decisions.ts';
import { readFlag, readNumber } from './facts.ts';
import type { HazardQuantity, SafetyData } from './safety-data.ts';

/**
 * What is wrong with a spec's `safety:` and `cautions:` and with the `hazard:` keys of its own circuits, each at its place.
 * Empty for a spec that cannot be read at all: `readSpec` says why. Pure.
 */
export function safetyProblems(text: string, file: string, data: SafetyData): readonly Problem[] {
  const yaml = readYaml(text, file);
  const parsed = yaml.problems.length ? undefined : specSchema.safeParse(yaml.data);
  if (!parsed?.success) return [];
  const report = new Report(yaml);
  const byTag = new Map([...data.quantities.values()].map((quantity) => [quantity.tag, quantity]));
  facts(report, parsed.data, data, byTag);
  decisions(report, parsed.data, data);
  tags(report, parsed.data, byTag);
  return report.problems;
}

type ByTag = ReadonlyMap<string, HazardQuantity>;

function facts(report: Report, spec: Spec, data: SafetyData, byTag: ByTag): void {
  const known = [...data.flags.keys(), ...byTag.keys()];
  for (const [name, text] of Object.entries(spec.safety ?? {})) {
    const path = ['safety', name];
    const quantity = byTag.get(name);
    if (data.flags.has(name)) report.attempt(path, () => readFlag(text));
    else if (quantity) report.attempt(path, () => readNumber(text, quantity.unit));
    else
      report.add(
        path,
        {
          code: 'unknown-fact',
          found: `\`${name}\``,
          expected: 'a fact or a hazard quantity of the safety tables',
          ...meant(name, known),
        },
        'key',
      );
  }
}

function decisions(report: Report, spec: Spec, data: SafetyData): void {
  const rules = new Map(data.cautions.map((rule) => [rule.id, rule]));
  for (const [id, { dismissed, ...rest }] of Object.entries(spec.cautions ?? {})) {
    const rule = rules.get(id);
    if (!rule) {
      report.add(
        ['cautions', id],
        {
          code: 'unknown-caution',
          found: `the caution \`${id}\``,
          expected: 'a caution of the safety tables, such as `S05`',
          ...meant(id, rules.keys()),
        },
        'key',
      );
      continue;
    }
    const fault = faultOf(
      { id, dismissed: dismissed === 'yes', ...rest } as CautionDecision,
      rule.level,
      rule.mayBeDismissed,
    );
    if (fault)
      report.add(
        ['cautions', id],
        {
          code: 'unsigned-decision',
          found: `a decision about ${id} that does not stand`,
          expected: `another: ${fault}`,
        },
        'key',
      );
  }
}

function tags(report: Report, spec: Spec, byTag: ByTag): void {
  for (const [id, circuit] of Object.entries(spec.circuits ?? {})) {
    const entries = [
      ...Object.entries(circuit.given ?? {}).map(([name, { hazard }]) => ({
        path: ['circuits', id, 'given', name, 'hazard'],
        hazard,
        unit: undefined,
      })),
      ...Object.entries(circuit.equations ?? {}).map(([name, { hazard, unit }]) => ({
        path: ['circuits', id, 'equations', name, 'hazard'],
        hazard,
        unit,
      })),
    ];
    for (const { path, hazard, unit } of entries) {
      if (hazard === undefined) continue;
      const quantity = byTag.get(hazard);
      if (!quantity)
        report.add(path, {
          code: 'unknown-fact',
          found: `the hazard quantity \`${hazard}\``,
          expected: 'one of the safety tables, such as `E_cap`',
          ...meant(hazard, byTag.keys()),
        });
      else if (unit !== undefined) report.attempt(path, () => requireKind(hazard, quantity, unit));
    }
  }
}

function requireKind(hazard: string, { unit }: HazardQuantity, typed: string): void {
  const { dimension } = parseUnit(typed);
  if (same(dimension, unit.dimension)) return;
  throw new TextError({
    code: 'wrong-unit',
    start: 0,
    end: hazard.length,
    found: `\`${hazard}\` on a quantity of ${describeDimension(dimension)}`,
    expected: `a quantity of ${describeDimension(unit.dimension)}`,
  });
}
