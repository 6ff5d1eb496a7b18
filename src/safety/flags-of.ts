import type { Board } from '../spec/board.ts';
import { readFlag } from './facts.ts';
import type { Feeding } from './fed.ts';
import type { SafetyData } from './safety-data.ts';
import type { Truth } from './truths.ts';

export interface KnownFlag {
  readonly truth: Truth;
  /** A circuit that proves it, where the spec is silent or says otherwise. */
  readonly provenBy?: string;
}

/**
 * What is known of each fact: as the spec states it, else proven by a circuit, else unknown. Silence is not no; and where
 * the spec says no while a circuit proves yes, nothing is known.
 */
export function flagsOf(board: Board, sources: Feeding, data: SafetyData): Map<string, KnownFlag> {
  const known = new Map<string, KnownFlag>();
  for (const { symbol, provenBy } of data.flags.values()) {
    const text = Object.hasOwn(board.safety, symbol) ? board.safety[symbol] : undefined;
    const stated = text === undefined ? undefined : readFlag(text);
    const proof = provenBy.flatMap((tag) => sources.get(tag) ?? []).find(({ circuit }) => circuit !== undefined)?.id;
    known.set(symbol, {
      truth:
        stated === true
          ? 'yes'
          : stated === false
            ? proof
              ? 'unknown'
              : 'no'
            : text === undefined && proof
              ? 'yes'
              : 'unknown',
      ...(proof && stated !== true ? { provenBy: proof } : {}),
    });
  }
  return known;
}
