import type { Interval } from './interval.ts';
import { operationNamed } from './operations/index.ts';
import { point } from './ranges.ts';
import { up } from './rounding.ts';
import { simplified } from './simplify/simplified.ts';
import type { Step, Tape } from './tape.ts';
import type { Span, Tree } from './tree.ts';

/** A slot that something is divided by, and where that was written: it must not be able to be zero. */
export interface Divisor {
  readonly slot: number;
  /**
   * Where it stands in a branch of an `if`: the divisor where the branch is taken, and far above or below zero where it
   * is not; and its size, far from zero where the branch is not taken.
   */
  readonly guarded?: { readonly above: number; readonly below: number; readonly size: number };
  readonly at?: Span;
  /** Whatever the caller said the equation belongs to. */
  readonly owner?: string;
}

export interface Finished {
  readonly tape: Tape;
  /** Slots of the outputs that were asked for, in their order. */
  readonly outputs: readonly number[];
  /** Slots of all divisors, those too that cancelled (`a·b/b` is `a`, but only where b is not zero). */
  readonly divisors: readonly Divisor[];
  /** Slot on the tape of a slot that the builder gave. */
  slotOf(built: number): number;
}

/** The branch of an `if` that an equation stands in. */
interface Guard {
  readonly condition: number;
  readonly taken: boolean;
}
/** Further from zero than any divisor of a board. */
const far = 1e300;

/** One computation while a tape is built. */
export type Node =
  | { readonly kind: 'input'; readonly name: string }
  | { readonly kind: 'constant'; readonly value: number; readonly within: Interval }
  | { readonly kind: 'call'; readonly operation: string; readonly args: readonly number[] };

// The double nearest to π is below π (Abramowitz & Stegun, table 1.1: 3.14159 26535 89793 23846…).
const PI: Interval = { lo: Math.PI, hi: up(Math.PI), certain: true };

/**
 * Builds a tape. The same computation twice is one slot, constants are calculated beforehand, and what cancels exactly
 * is left out (`simplify/`), so that a symbol that several equations share counts once.
 * The slots it gives are its own; `finish` lays out the tape and says where each went.
 * @param options.simplify  false keeps every operation as it was typed
 */
export class TapeBuilder {
  readonly #nodes: Node[] = [];
  readonly #known = new Map<string, number>();
  readonly #divisors: Divisor[] = [];
  readonly #simplify: boolean;

  constructor({ simplify = true }: { readonly simplify?: boolean } = {}) {
    this.#simplify = simplify;
  }

  /** The slot of an input; the same for the same name. */
  input(name: string): number {
    return this.#slot(`i${name}`, { kind: 'input', name });
  }

  /** @param within  where the exact number lies, if the double is not it */
  constant(value: number, within?: Interval): number {
    const range = within ?? (value === Math.PI ? PI : point(value));
    const key = `c${Object.is(value, -0) ? '-0' : value},${range.lo},${range.hi}`;
    return this.#slot(key, { kind: 'constant', value, within: range });
  }

  /** The slot of an operation on slots. `sum`, `min` and their like may have any number of arguments. */
  call(operation: string, args: readonly number[]): number {
    const { pairwise, commutes } = operationNamed(operation);
    if (pairwise && (args.length !== 2 || pairwise !== operation)) {
      return args.reduce((a, b) => this.call(pairwise, [a, b]));
    }
    const ordered = commutes ? args.toSorted((a, b) => a - b) : args;
    const folded = this.#folded(operation, ordered);
    if (folded !== undefined) return folded;
    return (this.#simplify ? simplified(this, operation, ordered) : undefined) ?? this.keep(operation, ordered);
  }

  /** The slot of an operation as it stands, without looking for a simpler one. */
  keep(operation: string, args: readonly number[]): number {
    return this.#slot(`${operation}:${args.join(',')}`, { kind: 'call', operation, args });
  }

  node(slot: number): Node {
    return this.#nodes[slot]!;
  }

  /**
   * The slot of an equation.
   * @param resolve  the slot of a name
   * @param owner  what the equation belongs to; goes with its divisors
   */
  tree(tree: Tree, resolve: (name: string) => number, owner?: string, guards: readonly Guard[] = []): number {
    switch (tree.kind) {
      case 'number':
        return this.constant(tree.value);
      case 'symbol':
        return resolve(tree.name);
      case 'call': {
        const args: number[] = [];
        for (const [k, arg] of tree.args.entries()) {
          const guard = tree.operation === 'if' && k > 0 ? [{ condition: args[0]!, taken: k === 1 }] : [];
          args.push(this.tree(arg, resolve, owner, [...guards, ...guard]));
        }
        this.#note(tree, args, owner, guards);
        return this.call(tree.operation, args);
      }
      default:
        return tree satisfies never;
    }
  }

  /** @param outputs  slots that are wanted; steps that none of them needs are left out. Without it, everything is kept. */
  finish(outputs?: readonly number[]): Finished {
    const wanted = outputs && this.#needed([...outputs, ...this.#divisors.flatMap(slotsOf)]);
    const place = new Map<number, number>();
    const inputs: string[] = [];
    this.#nodes.forEach((node, slot) => {
      if (node.kind === 'input') place.set(slot, inputs.push(node.name) - 1);
    });
    const steps: Step[] = [];
    this.#nodes.forEach((node, slot) => {
      if (node.kind === 'input' || (wanted && !wanted.has(slot))) return;
      place.set(slot, inputs.length + steps.push(stepOf(node, place)) - 1);
    });
    const slotOf = (slot: number): number => {
      const at = place.get(slot);
      if (at === undefined) throw new Error(`slot ${slot} was not among the outputs asked for`);
      return at;
    };
    const divisors = this.#divisors.map(({ guarded, ...divisor }) => ({
      ...divisor,
      slot: slotOf(divisor.slot),
      ...(guarded
        ? { guarded: { above: slotOf(guarded.above), below: slotOf(guarded.below), size: slotOf(guarded.size) } }
        : {}),
    }));
    return { tape: { inputs, steps }, outputs: (outputs ?? []).map(slotOf), divisors, slotOf };
  }

  #slot(key: string, node: Node): number {
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    this.#known.set(key, this.#nodes.length);
    return this.#nodes.push(node) - 1;
  }

  /** The constant that an operation on constants comes to, with the range that holds its exact value. */
  #folded(operation: string, args: readonly number[]): number | undefined {
    const nodes = args.map((slot) => this.#nodes[slot]!);
    if (!nodes.every((node) => node.kind === 'constant')) return undefined;
    const { value, range } = operationNamed(operation);
    const result = value(nodes.map((node) => node.value));
    const within = range(nodes.map((node) => node.within));
    return Number.isFinite(result) && within.certain ? this.constant(result, within) : undefined;
  }

  /** Keeps what an equation divides by, before anything cancels. */
  #note(
    tree: Tree & { kind: 'call' },
    args: readonly number[],
    owner: string | undefined,
    guards: readonly Guard[],
  ): void {
    const exponent = tree.operation === 'power' ? this.#nodes[args[1]!]! : undefined;
    const divides = tree.operation === 'divide' || (exponent?.kind === 'constant' && exponent.value < 0);
    if (!divides) return;
    const slot = args[tree.operation === 'divide' ? 1 : 0]!;
    const node = this.#nodes[slot]!;
    if (node.kind === 'constant' && node.value !== 0) return;
    const guarded = guards.length
      ? {
          above: this.#where(guards, slot, far),
          below: this.#where(guards, slot, -far),
          size: this.#where(guards, this.call('abs', [slot]), far),
        }
      : undefined;
    this.#divisors.push({
      slot,
      ...(guarded ? { guarded } : {}),
      at: tree.args[tree.operation === 'divide' ? 1 : 0]!.at,
      ...(owner ? { owner } : {}),
    });
  }

  /** The slot where all guards take their branch, a number where one does not. */
  #where(guards: readonly Guard[], slot: number, otherwise: number): number {
    const other = this.constant(otherwise);
    return guards.reduceRight(
      (inner, { condition, taken }) => this.call('if', taken ? [condition, inner, other] : [condition, other, inner]),
      slot,
    );
  }

  #needed(from: readonly number[]): Set<number> {
    const needed = new Set<number>();
    const open = [...from];
    for (let slot = open.pop(); slot !== undefined; slot = open.pop()) {
      if (needed.has(slot)) continue;
      needed.add(slot);
      const node = this.#nodes[slot]!;
      if (node.kind === 'call') open.push(...node.args);
    }
    return needed;
  }
}

const slotsOf = ({ slot, guarded }: Divisor): number[] =>
  guarded ? [slot, guarded.above, guarded.below, guarded.size] : [slot];

function stepOf(node: Node & { kind: 'constant' | 'call' }, place: ReadonlyMap<number, number>): Step {
  if (node.kind === 'call') return { operation: node.operation, args: node.args.map((slot) => place.get(slot)!) };
  const { value, within } = node;
  return within.lo === value && within.hi === value ? { constant: value } : { constant: value, within };
}
