import type { z } from 'zod';
import { isPure, same } from '../quantity/dimension.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { TextError, type TextProblem } from '../quantity/text-problem.ts';
import { describeDimension } from '../quantity/units.ts';
import type { Board, CautionDecision, Identity, Input, OperatingCase } from './board.ts';
import { knownKeys } from './known-keys.ts';
import type { Handbook, Policy } from './method-schema.ts';
import { inOrder, type Problem } from './problem.ts';
import { readCircuit } from './read-circuit.ts';
import {
  type Names,
  namesOf,
  readActions,
  readDecisions,
  readDeviations,
  readRequirements,
  readReview,
} from './read-record.ts';
import { hasKey, Report } from './report.ts';
import { salvaged } from './salvage.ts';
import { meant, schemaProblems } from './schema-problems.ts';
import { settle } from './settle.ts';
import { type Spec, specSchema } from './spec-schema.ts';
import { type Path, readYaml } from './yaml-file.ts';

export interface SpecSource {
  /** Shown in messages: `designs/orchard-cart/rev-b/spec.yaml`. */
  readonly file: string;
  /** Folder names of the board and the revision. */
  readonly board: string;
  readonly revision: string;
}

export interface ReadSpec {
  /** There exactly when no problem is. */
  readonly board?: Board;
  readonly problems: readonly Problem[];
  /** A problem that only the calculation brings to light, at the place of an input, result or check, or of `status`. */
  locate(id: string, what: Omit<TextProblem, 'start' | 'end'>): Problem;
}

/** A spec file as a board, or every problem that keeps it from being one. Pure: takes text, reads no disk. */
export function readSpec(text: string, source: SpecSource, handbook: Handbook): ReadSpec {
  const yaml = readYaml(text, source.file);
  const places = new Map<string, Path>();
  const locate: ReadSpec['locate'] = (id, what) => yaml.at(places.get(id) ?? (id === 'status' ? ['status'] : []), what);
  if (yaml.problems.length) return { problems: yaml.problems, locate };
  const parsed = specSchema.safeParse(yaml.data);
  const report = new Report(yaml);
  if (!parsed.success) {
    report.problems.push(...schemaProblems(yaml, parsed.error.issues, (path) => knownKeys(specSchema, path)));
    const rest = readable(yaml.data, parsed.error.issues);
    if (rest) assemble(report, rest.spec, source, handbook, places, rest.lost);
    return { problems: inOrder(report.problems), locate };
  }
  const board = assemble(report, parsed.data, source, handbook, places);
  return report.problems.length ? { problems: inOrder(report.problems), locate } : { board, problems: [], locate };
}

/** The parts of a misshapen spec whose shape is right, and the names that went with the others. */
function readable(
  data: unknown,
  issues: readonly z.core.$ZodIssue[],
): { spec: Spec; lost: ReadonlySet<string> } | undefined {
  const faults = issues.map((issue) => ({
    path: issue.path as Path,
    ...(issue.code === 'unrecognized_keys' ? { keys: issue.keys } : {}),
  }));
  const rest = salvaged(data, faults, Object.keys(specSchema.shape));
  const parsed = rest && specSchema.safeParse(rest.data);
  return rest && parsed?.success ? { spec: parsed.data, lost: rest.lost } : undefined;
}

function assemble(
  report: Report,
  spec: Spec,
  source: SpecSource,
  handbook: Handbook,
  places: Map<string, Path>,
  lost: ReadonlySet<string> = new Set(),
): Board {
  const conditions = readConditions(report, spec);
  const { policy, derating } = readDerating(report, spec, handbook);
  const names = new Set([...Object.keys(spec.conditions ?? {}), ...lost]);
  const unread = new Set([...lost, ...names].filter((name) => !conditions.some(({ id }) => id === name)));
  const drafts = Object.entries(spec.circuits ?? {}).map(([id, circuit]) => {
    const method = circuit.method === undefined ? undefined : handbook.methods.get(circuit.method);
    if (circuit.method !== undefined && !method) {
      unread.add(id);
      report.add(['circuits', id, 'method'], {
        code: 'unknown-method',
        found: `the method \`${circuit.method}\``,
        expected: 'a method of the handbook; `npm run new -- --list` shows them',
        ...meant(circuit.method, handbook.methods.keys()),
      });
    }
    if (id === 'board' || id === 'derating' || Object.hasOwn(spec.conditions ?? {}, id)) {
      report.add(
        ['circuits', id],
        {
          code: 'name-taken',
          found: `a circuit named \`${id}\``,
          expected: 'a name that is not `board`, `derating` or a condition',
        },
        'key',
      );
    }
    return method || circuit.method === undefined ? readCircuit(report, id, circuit, method, names) : undefined;
  });
  for (const draft of drafts) for (const [id, path] of draft?.places ?? []) places.set(id.replace(':', '.'), path);
  const read = drafts.filter((draft) => draft !== undefined);
  const record = readRecord(report, spec, namesOf(spec, read, conditions, unread));
  const { circuits, totals } = settle(report, read, conditions, derating, unread);
  return {
    name: source.board,
    revision: source.revision,
    identity: identityOf(spec),
    conditions,
    cases: readCases(report, spec, conditions),
    target: readTarget(report, spec),
    derating,
    circuits,
    totals,
    safety: spec.safety ?? {},
    cautions: readCautions(spec),
    ...record,
    bench: [],
    ...(policy ? { policy } : {}),
  };
}

type BoardRecord = Pick<Board, 'requirements' | 'deviations' | 'decisions' | 'actions' | 'review'>;
/** Requirements, decisions and the review: what speaks of circuits that are known by now. */
function readRecord(report: Report, spec: Spec, names: Names): BoardRecord {
  const review = readReview(report, spec, names);
  return {
    requirements: readRequirements(report, spec, names),
    deviations: readDeviations(report, spec, names),
    decisions: readDecisions(report, spec, names),
    actions: readActions(report, spec, names),
    ...(review ? { review } : {}),
  };
}

function identityOf(spec: Spec): Identity {
  const {
    board,
    document,
    revision,
    supersedes,
    issued,
    status,
    purpose,
    owner,
    department,
    designer,
    approver,
    classification,
    language,
    supplement,
  } = spec;
  const optional = { supersedes, owner, department, designer, approver, classification, supplement };
  return {
    title: board,
    document,
    mark: revision,
    issued,
    status,
    purpose,
    language: language ?? 'en',
    ...(Object.fromEntries(Object.entries(optional).filter(([, value]) => value !== undefined)) as Partial<Identity>),
  };
}

function readConditions(report: Report, spec: Spec): Input[] {
  return Object.entries(spec.conditions ?? {}).flatMap(([symbol, { is, says }]): Input[] => {
    const path: Path = ['conditions', symbol];
    const quantity = readRange(report, hasKey(report, path, 'is') ? [...path, 'is'] : path, is);
    if (!quantity) return [];
    const value = { kind: 'condition', quantity } as const;
    return [{ id: symbol, symbol, unit: quantity.unit, value, rating: false, usual: false, ...(says ? { says } : {}) }];
  });
}

/** A range, or a plain number for a condition that does not vary. */
function readRange(report: Report, path: Path, text: string): Quantity | undefined {
  return report.attempt(path, () => {
    const dash = /^(\S+(?: [^\s\d±+]+)?) ?[-–—] ?(\d.*)$/.exec(text);
    if (dash && /\d/.test(dash[1]!))
      throw new TextError({
        code: 'range-sign',
        start: 0,
        end: text.length,
        found: `\`${text}\``,
        expected: `the word \`to\` between the ends of a range, such as \`${dash[1]} to ${dash[2]}\``,
      });
    const quantity = parseQuantity(text);
    if (quantity.form === 'range' || quantity.form === 'number') return quantity;
    throw new TextError({
      code: 'not-a-range',
      start: 0,
      end: text.length,
      found: `\`${text}\``,
      expected: 'a range to endure, such as `-10 degC to 45 degC typ 25 degC`',
      hint: 'A tolerance belongs to a part; a condition is endured from end to end.',
    });
  });
}

function readCases(report: Report, spec: Spec, conditions: readonly Input[]): OperatingCase[] {
  const known = new Map(conditions.map((condition) => [condition.id, condition]));
  return Object.entries(spec.cases ?? {}).map(([name, entries]) => {
    const ranges = new Map<string, Quantity>();
    for (const [id, text] of Object.entries(entries)) {
      const path = ['cases', name, id];
      const condition = known.get(id);
      if (!condition) {
        report.add(
          path,
          {
            code: 'unknown-condition',
            found: `\`${id}\``,
            expected: 'a condition of the board',
            ...meant(id, known.keys()),
          },
          'key',
        );
        continue;
      }
      const quantity = readRange(report, path, text);
      if (!quantity || condition.value.kind !== 'condition') continue;
      const whole = condition.value.quantity;
      if (!same(quantity.unit.dimension, condition.unit.dimension)) {
        report.add(path, {
          code: 'wrong-unit',
          found: `\`${text}\`, a quantity of ${describeDimension(quantity.unit.dimension)}`,
          expected: `a quantity of ${describeDimension(condition.unit.dimension)}`,
        });
      } else if (quantity.min < whole.min || quantity.max > whole.max) {
        report.add(path, {
          code: 'case-outside-condition',
          found: `\`${text}\``,
          expected: `a part of \`${whole.text}\`, the range of the condition`,
        });
      } else ranges.set(id, quantity);
    }
    return { name, ranges };
  });
}

function readTarget(report: Report, spec: Spec): number {
  const text = spec.margins?.target;
  if (text === undefined) return 0;
  const target = report.attempt(['margins', 'target'], () => {
    const quantity = parseQuantity(text);
    if (quantity.form === 'number' && isPure(quantity.unit.dimension) && quantity.typ >= 0) return quantity.typ;
    throw new TextError({
      code: 'not-a-ratio',
      start: 0,
      end: text.length,
      found: `\`${text}\``,
      expected: 'a ratio such as `10 %`',
    });
  });
  return target ?? 0;
}

/** Taken where a spec names no policy, or its own table is silent on a factor; the packet lists what was taken so. */
const usualPolicy = 'commercial';

function readDerating(report: Report, spec: Spec, handbook: Handbook): { policy?: Policy; derating: Input[] } {
  const choice = spec.margins?.derating;
  if (typeof choice === 'string') {
    const policy = handbook.policies.get(choice);
    if (policy) return { policy, derating: policyFactors(report, policy, false) };
    report.add(['margins', 'derating'], {
      code: 'unknown-policy',
      found: `the derating policy \`${choice}\``,
      expected: `one of ${[...handbook.policies.keys()].map((id) => `\`${id}\``).join(', ')}, or a table of your own`,
      ...meant(choice, handbook.policies.keys()),
    });
  }
  const usual = handbook.policies.get(usualPolicy);
  const own = Object.entries(typeof choice === 'object' ? choice : {}).flatMap(([name, is]) =>
    factor(report, ['margins', 'derating', name], { name, is, says: '', from: "this board's own table", usual: false }),
  );
  const rest = usual ? policyFactors(report, usual, true).filter(({ id }) => !own.some((one) => one.id === id)) : [];
  return { derating: [...own, ...rest], ...(usual ? { policy: usual } : {}) };
}

const policyFactors = (report: Report, policy: Policy, usual: boolean): Input[] =>
  Object.entries(policy.factors).flatMap(([name, { is, says, source }]) =>
    factor(report, ['margins', 'derating'], { name, is, says, from: policy.sources[source] ?? source, usual }),
  );

function factor(
  report: Report,
  path: Path,
  { name, is, says, from, usual }: { name: string; is: string; says: string; from: string; usual: boolean },
): Input[] {
  const quantity = report.attempt(path, () => parseQuantity(is));
  if (!quantity) return [];
  return [
    {
      id: `derating.${name}`,
      symbol: name,
      says,
      unit: quantity.unit,
      value: { kind: 'exact', quantity },
      rating: false,
      from,
      usual,
    },
  ];
}

const readCautions = (spec: Spec): CautionDecision[] =>
  Object.entries(spec.cautions ?? {}).map(([id, { level, dismissed, reason, role, date }]) => ({
    id,
    dismissed: dismissed === 'yes',
    ...(level ? { level } : {}),
    ...(reason ? { reason } : {}),
    ...(role ? { role } : {}),
    ...(date ? { date } : {}),
  }));
