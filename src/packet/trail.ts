import type { Board, Check, Input } from '../spec/board.ts';
import { mentioned } from '../spec/names.ts';
import { link } from './inline.ts';
import { parted } from './symbols.ts';
import type { Inline, Text } from './text.ts';

/**
 * The trail from a printed number to where it comes from and to what uses it. Every circuit has a section, every result an
 * equation number, every input and check a row; their anchors are their ids, those of checks with `check-` before it.
 */
export interface Trail {
  /** `7.4`, by the circuit's id; sums of the board stand under `board`. */
  readonly sections: ReadonlyMap<string, string>;
  /** `7.14`, by the result's id. */
  readonly equations: ReadonlyMap<string, string>;
  /** Ids of results and inputs whose equation mentions an id, in the order of the packet. */
  readonly uses: ReadonlyMap<string, readonly string[]>;
  /** Checks whose statement mentions an id. */
  readonly limits: ReadonlyMap<string, readonly Check[]>;
}

/** @param prefix  stands before running numbers: those of the packet's seventh chapter, if silent */
export function trailOf(board: Board, prefix = '7.'): Trail {
  const { circuits, totals } = board;
  const results = [...circuits.flatMap((circuit) => circuit.results), ...totals];
  const sections = [...circuits.map(({ id }) => id), ...(totals.length ? ['board'] : [])];
  return {
    sections: new Map(sections.map((id, i) => [id, `${prefix}${i + 1}`])),
    equations: new Map(results.map(({ id }, i) => [id, `${prefix}${i + 1}`])),
    uses: usesOf(board),
    limits: gathered(
      circuits.flatMap(({ checks }) => checks.flatMap((check) => mentionedBy(check).map((id) => [id, check] as const))),
    ),
  };
}

export const mentionedBy = ({ left, right }: Check): string[] => [
  ...new Set([...mentioned(left), ...mentioned(right)]),
];

function usesOf({ circuits, totals }: Board): Map<string, string[]> {
  const given = circuits.flatMap(({ inputs }) =>
    inputs.flatMap(({ id, value }) => (value.kind === 'expression' ? [{ id, tree: value.tree }] : [])),
  );
  const found = [...circuits.flatMap(({ results, firmware }) => [...results, ...firmware]), ...totals];
  return gathered(
    [...found, ...given].flatMap(({ id, tree }) => [...mentioned(tree)].map((used) => [used, id] as const)),
  );
}

function gathered<T>(pairs: readonly (readonly [string, T])[]): Map<string, T[]> {
  const found = new Map<string, T[]>();
  for (const [key, value] of pairs) found.set(key, [...(found.get(key) ?? []), value]);
  return found;
}

export const checkAnchor = (id: string): string => `check-${id}`;
export const requirementAnchor = (id: string): string => `requirement-${id}`;

/** `bus_sense.full_scale` as a link to where it is judged. */
export const checkLink = (id: string): Inline => link(id, checkAnchor(id));

/** Whether an id has a line of its own in the packet: all but firmware constants and factors, whose tables list some only. */
const stands = (trail: Trail, id: string): boolean =>
  trail.equations.has(id) || trail.sections.has(parted(id).circuit ?? '');

/**
 * `pack.V_bat, 7.1`: an id as a link to its equation or row, with the section in which a reader on paper finds it.
 */
export function idLink(trail: Trail, id: string): Text {
  const { circuit } = parted(id);
  if (circuit === undefined) return [link(id, id), ', 6.1'];
  if (circuit === 'derating') return [link(id, id), ', 6.2'];
  if (!stands(trail, id)) return [id];
  return [link(id, id), `, ${trail.sections.get(circuit)}`];
}

/** Where an id is used, as short as a table cell needs: `7.3–7.5, 7.9, full_scale`. */
export function usedIn(trail: Trail, id: string, seen: ReadonlySet<string> = new Set()): Text {
  const users = (trail.uses.get(id) ?? []).filter((user) => !seen.has(user));
  const equations = runs(
    users.flatMap((user) => (trail.equations.has(user) ? [user] : [])),
    trail,
  );
  const others = users.filter((user) => !trail.equations.has(user)).map((user) => link(user, user));
  const own = (other: string) => parted(other).circuit === parted(id).circuit;
  const checks = (trail.limits.get(id) ?? []).map((check) =>
    link(own(check.id) ? check.name : check.id, checkAnchor(check.id)),
  );
  return [...equations, ...[...others, ...checks].map((one): Text => [one])].flatMap((text, i) =>
    i ? [', ', ...text] : text,
  );
}

/** Equation numbers with neighbours joined: (7.3)–(7.5). */
function runs(ids: readonly string[], trail: Trail): Text[] {
  const order = (id: string) => Number(trail.equations.get(id)!.split('.').at(-1));
  const sorted = [...new Set(ids)].sort((a, b) => order(a) - order(b));
  const found: string[][] = [];
  for (const id of sorted) {
    const last = found.at(-1);
    if (last && order(id) === order(last.at(-1)!) + 1) last.push(id);
    else found.push([id]);
  }
  const number = (id: string): Inline => link(`(${trail.equations.get(id)})`, id);
  return found.flatMap((run): Text[] =>
    run.length > 2 ? [[number(run[0]!), '–', number(run.at(-1)!)]] : run.map((id) => [number(id)]),
  );
}

/** What an input is called: by the spec or its method, or as the symbol that takes it over calls it. */
export function saysOf(trail: Trail, inputs: ReadonlyMap<string, Input>, input: Input): string | undefined {
  if (input.says) return input.says;
  for (const user of trail.uses.get(input.id) ?? []) {
    const other = inputs.get(user);
    if (other?.says && other.value.kind === 'expression' && other.value.tree.kind === 'symbol') return other.says;
  }
  return undefined;
}
