import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { Unit } from '../quantity/unit.ts';
import type { Handbook } from '../spec/method-schema.ts';
import { type DataSet, type PublishedCheck, type Run, runsOf } from './check.ts';
import { circuitFigures } from './kinds/circuit.ts';
import { methodFigures } from './kinds/method.ts';
import { policyFigures } from './kinds/policy.ts';
import { statisticFigures } from './kinds/statistic.ts';

/** One expected figure beside what came out. Numbers are in SI base units. */
export interface Judged {
  /** Symbol or name of the figure: `I_C`, `V_o worst max`. */
  readonly what: string;
  readonly given: Readonly<Record<string, string>>;
  readonly unit: Unit;
  readonly expected: number;
  /** What is still the same figure: from half a unit of the last printed digit, or the sampling error. */
  readonly least: number;
  readonly most: number;
  readonly got: number;
  readonly inside: boolean;
}

export interface Tools {
  readonly book: Handbook;
  readonly sets: ReadonlyMap<string, DataSet>;
}

/** Value of a figure by its name, SI base units; throws an Error when there is none of that name. */
export type Figures = (what: string) => number;

/** Works a check through, row by row, with the engine that works out boards. */
export function judged(check: PublishedCheck, tools: Tools): Judged[] {
  return runsOf(check).flatMap((run) => {
    const figures = figuresOf(check, run, tools);
    return Object.entries(run.gives).map(([what, text]) => ({
      what,
      given: run.given,
      ...beside(text, figures(what)),
    }));
  });
}

function figuresOf(check: PublishedCheck, run: Run, { book, sets }: Tools): Figures {
  if ('method' in check) return methodFigures(check.method, run.given, book);
  if ('policy' in check) return policyFigures(check.policy, run.given, book);
  if ('units' in check) return (typed) => parseQuantity(typed).typ;
  if ('statistic' in check) return statisticFigures(check.statistic, run.given, sets);
  return circuitFigures(check, run.given);
}

/** Rounding in the last bits is no difference. */
const dust = 1e-12;

function beside(text: string, got: number): Omit<Judged, 'what' | 'given'> {
  const { unit, typ: expected, min: least, max: most } = parseQuantity(text);
  const room = dust * Math.max(Math.abs(least), Math.abs(most));
  return { unit, expected, least, most, got, inside: got >= least - room && got <= most + room };
}
