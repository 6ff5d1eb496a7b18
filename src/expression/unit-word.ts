import { TextError } from '../quantity/text-problem.ts';
import type { Unit } from '../quantity/unit.ts';
import { parseUnit } from '../quantity/units.ts';

/** The unit that `text` spells, or undefined. */
export function unitNamed(text: string): Unit | undefined {
  if (text.trim() === '') return undefined;
  try {
    return parseUnit(text);
  } catch (error) {
    if (error instanceof TextError) return undefined;
    throw error;
  }
}
