import { nearest } from '../quantity/nearest.ts';
import type { Path } from './yaml-file.ts';

/** What of a misshapen spec can be read all the same, so that its other problems are found in the same go. */
export interface Salvage {
  readonly data: Readonly<Record<string, unknown>>;
  /** Circuits and conditions that were left out: nothing is said about their names. */
  readonly lost: ReadonlySet<string>;
}

/** Stand-ins for keys that every spec needs; such a board is never built. */
const standIns: Readonly<Record<string, string>> = {
  board: 'X',
  document: 'X',
  revision: 'X',
  issued: '2026-01-01',
  status: 'draft',
  purpose: 'X',
};

/**
 * Leaves out every entry of a section that holds a fault, and takes a misspelt key of the file for the one that was meant.
 * @param faults  path of each, with the keys that nobody knows there
 * @param known  keys of the file
 */
export function salvaged(
  data: unknown,
  faults: readonly { readonly path: Path; readonly keys?: readonly string[] }[],
  known: readonly string[],
): Salvage | undefined {
  if (!isRecord(data)) return undefined;
  const left: Record<string, unknown> = { ...data };
  const lost = new Set<string>();
  for (const { path, keys = [] } of faults) {
    const [section, entry] = path;
    if (section === undefined) {
      for (const key of keys) {
        const [meant] = nearest(key, known);
        if (meant && left[meant] === undefined) left[meant] = left[key];
        delete left[key];
      }
    } else if (entry === undefined) {
      if (section === 'circuits' || section === 'conditions') return undefined;
      delete left[section];
    } else {
      left[section] = without(left[section], entry);
      if (section === 'circuits' || section === 'conditions') lost.add(String(entry));
    }
  }
  for (const [key, standIn] of Object.entries(standIns)) left[key] ??= standIn;
  return { data: left, lost };
}

function without(section: unknown, entry: string | number): unknown {
  if (Array.isArray(section)) return section.filter((_, i) => i !== entry);
  if (!isRecord(section)) return section;
  return Object.fromEntries(Object.entries(section).filter(([key]) => key !== String(entry)));
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
