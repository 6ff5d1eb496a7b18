import type { CheckFinding, ResultFinding } from '../analysis/findings.ts';
import type { Input } from '../spec/board.ts';
import { byId, inputsOf, type Reviewed } from './by-id.ts';

/** What differs between a revision and the one it replaces; `before` is absent where something is new, `after` where it is gone. */
export interface Changes {
  readonly inputs: readonly Change<Input>[];
  /** Results of which an end of the worst case or the typical value moved by more than `threshold`. */
  readonly results: readonly Change<ResultFinding>[];
  /** Checks that came, went, changed their verdict or moved their margin by more than half a per cent of the limit. */
  readonly checks: readonly Change<CheckFinding>[];
  /** Ids of everything above: what carries a change bar. */
  readonly ids: ReadonlySet<string>;
}
export interface Change<T> {
  readonly id: string;
  readonly before?: T;
  readonly after?: T;
}

export const noChanges: Changes = { inputs: [], results: [], checks: [], ids: new Set() };

/** A result has moved when it differs by more than this share of its largest value. */
export const threshold = 0.01;
const marginThreshold = 0.005;

export function changesBetween(before: Reviewed, after: Reviewed): Changes {
  const inputs = differing(inputsOf(before.board), inputsOf(after.board), (a, b) => writtenAs(a) !== writtenAs(b));
  const results = differing(
    new Map(Object.entries(before.findings.results)),
    new Map(Object.entries(after.findings.results)),
    moved,
  );
  const checks = differing(byId(before.findings.checks), byId(after.findings.checks), judgedOtherwise);
  return { inputs, results, checks, ids: new Set([...inputs, ...results, ...checks].map(({ id }) => id)) };
}

function differing<T>(
  before: ReadonlyMap<string, T>,
  after: ReadonlyMap<string, T>,
  differs: (a: T, b: T) => boolean,
): Change<T>[] {
  const kept = [...after].flatMap(([id, now]): Change<T>[] => {
    const then = before.get(id);
    if (then === undefined) return [{ id, after: now }];
    return differs(then, now) ? [{ id, before: then, after: now }] : [];
  });
  const gone = [...before].flatMap(([id, then]): Change<T>[] => (after.has(id) ? [] : [{ id, before: then }]));
  return [...kept, ...gone];
}

/** An input as written, apart from blanks: value, designators and how far it can be relied on. */
const writtenAs = (input: Input): string => [valueText(input), input.refs ?? '', input.basis ?? ''].join('\n');

export const valueText = ({ value }: Pick<Input, 'value'>): string =>
  (value.kind === 'expression' ? value.text : value.quantity.text).replaceAll(/\s+/g, ' ');

function moved(a: ResultFinding, b: ResultFinding): boolean {
  if (a.unit !== b.unit) return true;
  const pairs = [
    [a.nominal, b.nominal],
    [a.worst.min, b.worst.min],
    [a.worst.max, b.worst.max],
  ] as const;
  const size = Math.max(...pairs.flat().map(Math.abs));
  return pairs.some(([x, y]) => Math.abs(x - y) > threshold * size);
}

function judgedOtherwise(a: CheckFinding, b: CheckFinding): boolean {
  if (a.verdict !== b.verdict || a.statement !== b.statement) return true;
  return Math.abs((a.margin ?? 0) - (b.margin ?? 0)) > marginThreshold;
}
