import { blanksIn, filled } from './blanks.ts';
import { figureOf } from './figures.ts';
import type { CautionRule, Words } from './safety-data.ts';
import type { HazardValue } from './solve.ts';

/**
 * A caution's words with the numbers of this board. Where one of a sentence's numbers is infinite or not known, the
 * caution's words for that case stand instead, if it has some.
 */
export function filledWords(rule: CautionRule, values: ReadonlyMap<string, HazardValue>): Words {
  const fill = (key: keyof Words) => filled(chosen(key, rule, values), (name) => inWords(values.get(name)!));
  return { text: fill('text'), precaution: fill('precaution') };
}

/** The quantities that a caution's words speak of on this board. */
export function spokenOf(rule: CautionRule, values: ReadonlyMap<string, HazardValue>): string[] {
  return (['text', 'precaution'] as const).flatMap((key) => blanksIn(chosen(key, rule, values)));
}

function chosen(key: keyof Words, rule: CautionRule, values: ReadonlyMap<string, HazardValue>): string {
  const usual = rule.words[key];
  const states = new Set(blanksIn(usual).map((name) => values.get(name)!.state));
  const endless = states.has('infinite') ? rule.ifEndless[key] : undefined;
  return endless ?? (states.has('unknown') ? rule.ifUnknown[key] : undefined) ?? usual;
}

/** `58.8 V`; `58.8 V or more`; `an unknown voltage`; `a voltage without limit`. */
function inWords({ quantity, range, state }: HazardValue): string {
  if (state === 'infinite') return quantity.endless;
  return figureOf(quantity, range) || quantity.unknown;
}
