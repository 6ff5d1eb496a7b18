import type { Input } from './board.ts';
import type { DraftCircuit } from './read-circuit.ts';
import type { Action, Criterion, Decision, Deviation, Requirement, ReviewRecord, Verification } from './record.ts';
import { verifications } from './record-schema.ts';
import type { Report } from './report.ts';
import { meant, valueAt } from './schema-problems.ts';
import type { Spec } from './spec-schema.ts';
import type { Path } from './yaml-file.ts';

/** Everything that the record of a review may speak of. */
export interface Names {
  readonly checks: readonly string[];
  /** Test points and results. */
  readonly points: readonly string[];
  readonly all: ReadonlySet<string>;
  /** Whether a name may be that of something that could not be read, of which nothing more is said. */
  excused(name: string): boolean;
}

/** Names of a board before it is known whether its equations hold together. */
export function namesOf(
  spec: Spec,
  drafts: readonly DraftCircuit[],
  conditions: readonly Input[],
  unread: ReadonlySet<string>,
): Names {
  const checks = drafts.flatMap(({ id, checkNames }) => checkNames.map((name) => `${id}.${name}`));
  const symbols = drafts.flatMap(({ id, declared }) => [...declared].map((symbol) => `${id}.${symbol}`));
  const given = new Set(drafts.flatMap((draft) => draft.inputs.map(({ id }) => id)));
  const points = [
    ...drafts.flatMap(({ id, testPoints }) => testPoints.map(({ name }) => `${id}.${name}`)),
    ...symbols.filter((id) => !given.has(id)),
  ];
  return {
    checks,
    points,
    all: new Set([
      ...drafts.map(({ id }) => id),
      ...conditions.map(({ id }) => id),
      ...symbols,
      ...checks,
      ...Object.keys(spec.requirements ?? {}),
    ]),
    excused: (name) => unread.has(name.split('.', 1)[0]!),
  };
}

export function readRequirements(report: Report, spec: Spec, names: Names): Requirement[] {
  return Object.entries(spec.requirements ?? {}).map(([id, requirement]) => {
    const path: Path = ['requirements', id];
    const shownBy = (requirement['shown by'] ?? []).flatMap((pattern, i) =>
      readPattern(report, at(report, [...path, 'shown by'], i), pattern, names),
    );
    const tested = (requirement['tested at'] ?? []).map((point, i) => {
      if (!names.points.includes(point) && !names.excused(point))
        report.add(at(report, [...path, 'tested at'], i), {
          code: 'unknown-point',
          found: `\`${point}\``,
          expected: 'a test point such as `bus_sense.tap`, or a result',
          ...meant(point, names.points),
        });
      return point;
    });
    const methods = readMethods(report, [...path, 'method'], requirement.method);
    return {
      id,
      says: requirement.says,
      shownBy: [...new Set(shownBy)],
      methods: methods ?? [
        ...(shownBy.length ? ['analysis' as const] : []),
        ...(tested.length ? ['test' as const] : []),
      ],
      tested,
      evidence: requirement.evidence ?? [],
      ...optional({ criterion: requirement.criterion, why: requirement.why, from: requirement.from }),
    };
  });
}

function readPattern(report: Report, path: Path, pattern: string, { checks, excused }: Names): string[] {
  const hits = checks.filter(
    (check) => check === pattern || (pattern.endsWith('.*') && check.startsWith(pattern.slice(0, -1))),
  );
  if (!hits.length && !excused(pattern))
    report.add(path, {
      code: 'unknown-check',
      found: `\`${pattern}\``,
      expected: 'a check such as `stage.junction`, or all checks of a circuit such as `stage.*`',
      ...meant(pattern, checks),
    });
  return hits;
}

/** `A, T` or `[analysis, test]`; undefined where nothing is said. */
function readMethods(report: Report, path: Path, typed: readonly string[] | undefined): Verification[] | undefined {
  if (!typed) return undefined;
  const words = typed.flatMap((text) => text.split(/[\s,]+/).filter(Boolean));
  return words.flatMap((word): Verification[] => {
    const found = verifications.find((one) => one === word.toLowerCase() || one[0]!.toUpperCase() === word);
    if (!found)
      report.add(path, {
        code: 'not-one-of',
        found: `\`${word}\``,
        expected: `one of ${verifications.map((one) => `\`${one}\``).join(', ')}, or its first letter`,
        ...meant(word, verifications),
      });
    return found ? [found] : [];
  });
}

export function readDeviations(report: Report, spec: Spec, { checks, excused }: Names): Deviation[] {
  return (spec.deviations ?? []).map((one, i) => {
    const { check, reason, approved, by, effect, until } = one;
    if (!checks.includes(check) && !excused(check))
      report.add(['deviations', i, 'check'], {
        code: 'unknown-check',
        found: `\`${check}\``,
        expected: 'a check of this board',
        ...meant(check, checks),
      });
    return {
      id: `D-${i + 1}`,
      check,
      reason,
      approved,
      ...optional({ by, effect, until, appliesTo: one['applies to'] }),
    };
  });
}

export const readDecisions = (report: Report, spec: Spec, names: Names): Decision[] =>
  Object.entries(spec.decisions ?? {}).map(([id, { what, why, date, by, about, ...rest }]) => ({
    id,
    what,
    why,
    date,
    insteadOf: rest['instead of'] ?? [],
    about: readAbout(report, ['decisions', id, 'about'], about, names),
    ...optional({ by }),
  }));

export const readActions = (report: Report, spec: Spec, names: Names): Action[] =>
  Object.entries(spec.actions ?? {}).map(([id, { says, who, due, closed, answer, about, ...rest }]) => ({
    id,
    says,
    blocksRelease: rest['blocks release'] === 'yes',
    about: readAbout(report, ['actions', id, 'about'], about, names),
    ...optional({ who, due, closed, answer }),
  }));

export function readReview(report: Report, spec: Spec, names: Names): ReviewRecord | undefined {
  const { review } = spec;
  if (!review) return undefined;
  const actions = Object.keys(spec.actions ?? {});
  const criteria = (given: typeof review.entrance): Criterion[] =>
    (given ?? []).map(({ says, met, remark }) => ({
      says,
      ...(met ? { met: met === 'yes' } : {}),
      ...optional({ remark }),
    }));
  return {
    kind: review.kind,
    date: review.date,
    present: review.present,
    aims: review.aims ?? [],
    entrance: criteria(review.entrance),
    success: criteria(review.success),
    comments: Object.entries(review.comments ?? {}).map(([id, { says, class: kind, by, answer, action, about }]) => {
      if (action !== undefined && !actions.includes(action))
        report.add(['review', 'comments', id, 'action'], {
          code: 'unknown-action',
          found: `\`${action}\``,
          expected: 'an action of this file',
          ...meant(action, actions),
        });
      return {
        id,
        says,
        class: kind,
        about: readAbout(report, ['review', 'comments', id, 'about'], about, names),
        ...optional({ by, answer, action }),
      };
    }),
    conditions: review.conditions ?? [],
    ...optional({ outcome: review.outcome }),
  };
}

function readAbout(
  report: Report,
  path: Path,
  about: readonly string[] | undefined,
  { all, excused }: Names,
): readonly string[] {
  for (const [i, id] of (about ?? []).entries())
    if (!all.has(id) && !excused(id))
      report.add(at(report, path, i), {
        code: 'unknown-name',
        found: `\`${id}\``,
        expected: 'a circuit, result, input, check or requirement of this board',
        ...meant(id, all),
      });
  return about ?? [];
}

/** A list may be written as its one item. */
const at = (report: Report, path: Path, i: number): Path =>
  Array.isArray(valueAt(report.yaml.data, path)) ? [...path, i] : path;

type Filled<T> = { [K in keyof T]?: Exclude<T[K], undefined> };
const optional = <T extends Record<string, unknown>>(fields: T): Filled<T> =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Filled<T>;
