import { same } from '../quantity/dimension.ts';
import { inE24, neighbours } from '../quantity/preferred/nearest.ts';
import { allSeries, seriesFor } from '../quantity/preferred/series.ts';
import { parseUnit } from '../quantity/units.ts';
import type { Board, Input } from '../spec/board.ts';
import type { PreferredFinding } from './findings.ts';
import { inUnit, printedUnit } from './units.ts';

const ohm = parseUnit('ohm').dimension;
const farad = parseUnit('F').dimension;
/** Below it shunts are made in round values of one digit. Common practice, no source. */
const shuntBelow = 0.01;

/**
 * Resistors and capacitors against the preferred values of their tolerance. What is given by data-sheet limits or follows
 * from others, such as the capacitance left at a voltage, is no value that is bought and stands not here.
 * @see IEC 60063
 */
export function preferredFindings(board: Board): PreferredFinding[] {
  return board.circuits.flatMap(({ inputs }) => inputs.filter(isBought).map(findingOf));
}

function isBought({ part, rating, unit, value }: Input): boolean {
  if (rating || value.kind === 'expression' || value.kind === 'condition') return false;
  if (value.quantity.form !== 'number' && value.quantity.form !== 'tolerance') return false;
  const dimension = part === 'resistor' ? ohm : part === 'capacitor' ? farad : undefined;
  // A resistance of a capacitor is no resistor.
  return dimension !== undefined && same(unit.dimension, dimension) && value.quantity.typ > 0;
}

function findingOf({ id, unit, value }: Input): PreferredFinding {
  if (value.kind === 'expression') throw new Error(`${id} follows from others and is no part`);
  const { min, typ, max } = value.quantity;
  const tolerance = Math.max(max - typ, typ - min) / typ;
  // Without a tolerance any series may hold it: the coarsest that does, else the finest.
  const series =
    tolerance > 0
      ? seriesFor(tolerance)
      : (allSeries.find((one) => isIn(typ, neighbours(typ, one))) ?? allSeries.at(-1)!);
  const { below, above } = neighbours(typ, series);
  const round = same(unit.dimension, ohm) && typ < shuntBelow && isRound(typ);
  const stands = below === above ? 'in series' : inE24(typ) ? 'in E24' : round ? 'round shunt' : 'in none';
  return {
    input: id,
    unit: printedUnit(unit),
    value: inUnit(typ, unit),
    tolerance: tolerance > 0 ? tolerance : null,
    series: series.name,
    stands,
    below: inUnit(below, unit),
    above: inUnit(above, unit),
  };
}

const isIn = (value: number, { below, above }: { below: number; above: number }): boolean =>
  below === above && Math.abs(below / value - 1) < 1e-6;

const isRound = (value: number): boolean => {
  const mantissa = value / 10 ** Math.floor(Math.log10(value * (1 + 1e-9)));
  return Math.abs(mantissa - Math.round(mantissa)) < 1e-6;
};
