import type { AssumptionFinding } from '../../analysis/findings.ts';
import { same } from '../../quantity/dimension.ts';
import { parseUnit } from '../../quantity/units.ts';
import type { Input } from '../../spec/board.ts';

const thermalResistance = parseUnit('K/W').dimension;

/** What turns an assumption into something that somebody stands for, by what kind of value it is. */
export function howToClose(input: Input, basis: AssumptionFinding['basis']): string {
  if (input.id.startsWith('derating.')) return 'a derating policy signed for this board';
  if (same(input.unit.dimension, thermalResistance)) return 'a thermal reading of the prototype in its housing';
  if (input.part === 'copper' || input.part === 'wire' || input.part === 'connector')
    return 'a four-wire reading of several boards';
  if (input.part === 'motor') return 'readings of several motors, cold and hot';
  if (input.part === 'battery') return "the cell maker's limits over life, or readings of aged cells";
  if (input.rating) return "the maker's data sheet, with its page";
  if (basis === 'typical') return "the maker's limits over temperature, or readings of several parts";
  if (basis === 'assumed') return 'a reading, or a reason that is signed';
  return input.part ? "the maker's data sheet, with its page" : 'its value in the specification, with its source';
}
