import { Parser } from './parser.ts';
import { refuse } from './refuse.ts';
import type { Tree } from './tree.ts';

/** The two sides of a check, and how they are compared. */
export interface Statement {
  readonly left: Tree;
  readonly relation: Relation;
  readonly right: Tree;
}

export type Relation = '<=' | '>=' | '<' | '>';

/**
 * Reads an expression such as `V_in * R_bot / (R_top + R_bot)`. Throws a TextError at the character that is wrong.
 *
 * A parser of our own: every node must know where it was typed, so that a wrong unit can be pointed at, and parsers
 * with implicit multiplication read `1 / 2 us` as (1/2)·us. The rules:
 * - Signs `+ - * / ^ < <= > >=` and brackets; `· × ÷ − ≤ ≥ ² ³` are read too. `^` binds tighter than a sign before it
 *   and goes from the right. Nothing is multiplied without a `*`.
 * - A bare symbol is always a variable, never a unit; `pi` alone is a constant.
 * - A number may be followed by one unit word, with a whole power that belongs to the unit: `10 mV`, `4 mm^2`. A unit of
 *   several words stands in square brackets: `10 [V/us]`. `10 V/us` without spaces is refused, for it can mean either.
 * @example parseExpression('1 / 2 us') // 1 divided by 2 µs
 */
export function parseExpression(text: string): Tree {
  return new Parser(text).whole();
}

/** Reads a check such as `P_top <= 0.5 * P_r`. Throws a TextError. */
export function parseStatement(text: string): Statement {
  const tree = parseExpression(text);
  const relation = tree.kind === 'call' ? RELATIONS[tree.operation] : undefined;
  if (tree.kind === 'call' && relation) return { left: tree.args[0]!, relation, right: tree.args[1]! };
  const expected = 'a comparison such as V_out <= 3.3 V';
  return refuse('not-a-comparison', tree.at, `\`${text.trim()}\`, which compares nothing`, expected);
}

const RELATIONS: Readonly<Record<string, Relation>> = { lessEqual: '<=', greaterEqual: '>=', less: '<', greater: '>' };
