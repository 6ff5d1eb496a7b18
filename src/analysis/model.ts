import type { Tape } from '../expression/tape.ts';
import { type Divisor, TapeBuilder } from '../expression/tape-builder.ts';
import type { Tree } from '../expression/tree.ts';
import type { Band, Quantity } from '../quantity/quantity.ts';
import type { Board, Check, Circuit, Input, Result } from '../spec/board.ts';
import { mentioned } from '../spec/names.ts';
import { ordered } from '../spec/order.ts';
import { type Correlated, correlatedOf } from './correlation.ts';
import { type Draw, drawOf, type Variable } from './variable.ts';

/**
 * The whole board as one tape over its variables. Parts that stand several times on the board have a variable for each.
 * Worst cases are sought on the first of several alike (they are the same for all); simulated boards use them all.
 */
export interface Model {
  readonly tape: Tape;
  /** In the order of the tape's inputs. */
  readonly variables: readonly Variable[];
  /** Slot of each input and result of the board by its id, for the first of several alike. */
  readonly slots: ReadonlyMap<string, number>;
  /** Slot of a result on a simulated board: sums of the board add up each of several alike. */
  readonly simulated: ReadonlyMap<string, number>;
  /** Variables that are not independent of each other. */
  readonly correlated: readonly Correlated[];
  readonly results: readonly Result[];
  readonly checks: readonly ModelCheck[];
  /** What some equation divides by; `owner` is the id of the result or check. */
  readonly divisors: readonly Divisor[];
}

export interface ModelCheck {
  readonly check: Check;
  readonly circuit: Circuit;
  /** Whether it decides on the board, or only says when the equations hold. */
  readonly validity: boolean;
  readonly slack: number;
  readonly limit: number;
  /** The least slack among several alike on one simulated board. */
  readonly simulated: number;
}

/** 25 °C, to which drifts are stated. */
const reference = 298.15;

export function modelOf(board: Board): Model {
  return new ModelBuilder(board).build();
}

class ModelBuilder {
  readonly #board: Board;
  readonly #tape = new TapeBuilder();
  readonly #variables: Variable[] = [];
  readonly #slots = new Map<string, number>();
  readonly #inputs = new Map<string, Input>();
  readonly #trees = new Map<string, Tree>();
  readonly #circuits = new Map<string, Circuit>();

  constructor(board: Board) {
    this.#board = board;
    for (const input of [...board.conditions, ...board.derating]) this.#inputs.set(input.id, input);
    for (const circuit of board.circuits) {
      for (const input of circuit.inputs) this.#inputs.set(input.id, input);
      for (const entry of [...circuit.inputs, ...circuit.results, ...circuit.firmware])
        this.#circuits.set(entry.id, circuit);
      for (const result of [...circuit.results, ...circuit.firmware]) this.#trees.set(result.id, result.tree);
    }
    for (const total of board.totals) this.#trees.set(total.id, total.tree);
    for (const { id, value } of this.#inputs.values()) if (value.kind === 'expression') this.#trees.set(id, value.tree);
  }

  build(): Model {
    for (const id of this.#order()) {
      for (let instance = 1; instance <= this.#count(id); instance++)
        this.#slots.set(key(id, instance), this.#make(id, instance));
    }
    const results = [
      ...this.#board.circuits.flatMap((circuit) => [...circuit.results, ...circuit.firmware]),
      ...this.#board.totals,
    ];
    const checks = this.#board.circuits.flatMap((circuit) => [
      ...circuit.checks.map((check) => this.#check(check, circuit, false)),
      ...circuit.validity.map((check) => this.#check(check, circuit, true)),
    ]);
    const simulated = new Map(results.map(({ id }) => [id, this.#slots.get(key(id, 1))!]));
    for (const total of this.#board.totals) simulated.set(total.id, this.#total(total));
    const { tape, slotOf, divisors } = this.#tape.finish();
    const placed = (slots: Map<string, number>) => new Map([...slots].map(([id, slot]) => [id, slotOf(slot)]));
    return {
      tape,
      divisors,
      variables: this.#variables,
      correlated: correlatedOf(this.#board, this.#variables),
      slots: placed(this.#slots),
      simulated: placed(simulated),
      results,
      checks: checks.map((check) => ({
        ...check,
        slack: slotOf(check.slack),
        limit: slotOf(check.limit),
        simulated: slotOf(check.simulated),
      })),
    };
  }

  /** Everything after all that it needs, drifting parts after the temperature they follow. */
  #order(): string[] {
    const needs = (id: string): string[] => {
      const tree = this.#trees.get(id);
      const input = this.#inputs.get(id);
      const temperature = input && drifts(input) ? this.#circuits.get(id)?.temperature : undefined;
      const tracks = input?.value.kind === 'part' && input.value.tracks ? [input.value.tracks.of] : [];
      return [...(tree ? mentioned(tree) : []), ...(temperature ? mentioned(temperature) : []), ...tracks];
    };
    return ordered([...this.#inputs.keys(), ...this.#trees.keys()], needs).order;
  }

  #count(id: string): number {
    return this.#circuits.get(id)?.count ?? 1;
  }

  /** A circuit that stands as often as another goes with it one by one; any other sees the first. */
  #slot(id: string, instance: number): number {
    return this.#slots.get(key(id, Math.min(instance, this.#count(id)) === instance ? instance : 1))!;
  }

  #make(id: string, instance: number): number {
    const tree = this.#trees.get(id);
    if (tree) return this.#expression(tree, instance, id);
    const input = this.#inputs.get(id)!;
    if (input.value.kind === 'expression') throw new Error(`${id} has no equation`);
    const { quantity } = input.value;
    if (input.value.kind === 'exact')
      return movable(input) ? this.#variable(input, 'value', quantity, instance) : this.#tape.constant(quantity.typ);
    if (input.value.kind === 'condition')
      return instance === 1 ? this.#variable(input, 'value', quantity, instance) : this.#slot(id, 1);
    return this.#part(input, instance);
  }

  /** (initial × (1 + tc·ΔT) + tc'·ΔT) × (1 + ageing), ΔT from 25 °C; a part that tracks takes the other's ratio to nominal. */
  #part(input: Input, instance: number): number {
    if (input.value.kind !== 'part') throw new Error(`${input.id} is no part`);
    const { quantity, tracks } = input.value;
    if (tracks) return this.#tracking(input, tracks.of, instance);
    const tape = this.#tape;
    let slot = this.#variable(input, 'value', quantity, instance);
    if (quantity.drift)
      slot = tape.call('multiply', [
        slot,
        tape.call('add', [tape.constant(1), this.#change(input, quantity.drift, instance)]),
      ]);
    if (quantity.driftAbsolute) slot = tape.call('add', [slot, this.#change(input, quantity.driftAbsolute, instance)]);
    if (quantity.ageing) {
      const change = this.#variable(
        input,
        'ageing',
        { ...quantity.ageing, typ: nearestToZero(quantity.ageing) },
        instance,
      );
      slot = tape.call('multiply', [slot, tape.call('add', [tape.constant(1), change])]);
    }
    return slot;
  }

  /** What a temperature coefficient makes of the distance from 25 °C. */
  #change(input: Input, band: Band, instance: number): number {
    const kelvin = this.#tape.call('subtract', [
      this.#expression(this.#circuits.get(input.id)!.temperature!, instance),
      this.#tape.constant(reference),
    ]);
    return this.#tape.call('multiply', [
      this.#variable(input, 'drift', { ...band, typ: middle(band) }, instance),
      kelvin,
    ]);
  }

  #tracking(input: Input, of: string, instance: number): number {
    if (input.value.kind !== 'part' || !input.value.tracks) throw new Error(`${input.id} tracks nothing`);
    const other = this.#inputs.get(of)!;
    const nominal = other.value.kind === 'part' ? other.value.quantity.typ : 1;
    const ratio = this.#variable(input, 'tracking', input.value.tracks.within, instance);
    const scale = this.#tape.constant(input.value.quantity.typ / nominal);
    return this.#tape.call('multiply', [this.#tape.call('multiply', [this.#slot(of, instance), scale]), ratio]);
  }

  #variable(
    input: Input,
    what: Variable['what'],
    range: { min: number; typ: number; max: number },
    instance: number,
  ): number {
    const suffix = `${what === 'value' ? '' : ` ${what}`}${instance === 1 ? '' : ` #${instance}`}`;
    const role =
      input.value.kind === 'condition' ? 'condition' : what === 'value' && range.min === range.max ? 'exact' : 'part';
    const { min, typ, max } = range;
    this.#variables.push({
      id: input.id + suffix,
      role,
      what,
      min,
      typ,
      max,
      draw: role === 'part' ? drawFor(input, what) : { kind: 'held' },
      input,
      instance,
    });
    return this.#tape.input(input.id + suffix);
  }

  #expression(tree: Tree, instance: number, owner?: string): number {
    return this.#tape.tree(tree, (name) => this.#slot(name, instance), owner);
  }

  #check(check: Check, circuit: Circuit, validity: boolean): ModelCheck {
    const slackOf = (instance: number) => {
      const left = this.#expression(check.left, instance, check.id);
      const right = this.#expression(check.right, instance, check.id);
      return this.#tape.call('subtract', check.sense === 'atMost' ? [right, left] : [left, right]);
    };
    const slacks = Array.from({ length: circuit.count }, (_, i) => slackOf(i + 1));
    const simulated = slacks.length === 1 ? slacks[0]! : this.#tape.call('min', slacks);
    return { check, circuit, validity, slack: slacks[0]!, limit: this.#expression(check.right, 1), simulated };
  }

  #total(total: Result): number {
    const marked = [...mentioned(total.tree)].flatMap((id) =>
      Array.from({ length: this.#count(id) }, (_, i) => this.#slot(id, i + 1)),
    );
    return marked.length === 1 ? marked[0]! : this.#tape.call('sum', marked);
  }
}

/** An exact value whose room somebody may ask for; other constants are worked into the equations once for all. */
const movable = ({ part, rating, refs }: Input): boolean => part !== undefined || rating || refs !== undefined;

function drawFor({ value }: Input, what: Variable['what']): Draw {
  if (value.kind !== 'part' || what === 'drift' || what === 'ageing') return { kind: 'uniform' };
  return drawOf(what === 'tracking' ? value.tracks!.within : value.quantity);
}

const key = (id: string, instance: number): string => (instance === 1 ? id : `${id} #${instance}`);
const drifts = (input: Input): boolean =>
  input.value.kind === 'part' && driftOf(input.value.quantity) !== undefined && !input.value.tracks;
const driftOf = ({ drift, driftAbsolute }: Quantity): Band | undefined => drift ?? driftAbsolute;
const middle = ({ min, max }: Band): number => (min + max) / 2;
const nearestToZero = ({ min, max }: Band): number => (min > 0 ? min : max < 0 ? max : 0);
