import { dirname } from 'node:path';
import { filesIn, keepFolders } from '../archive/keep-earlier.ts';
import type { CalculationFailure, StoredRevision } from '../site/calculated.ts';
import { packetFor } from '../site/packets.ts';
import { type Finished, headOf, listedAsKept, nameOf, readRecord } from './finished.ts';
import type { Task } from './task.ts';

/** Packets of the earlier output that stay as they are. */
export interface Kept {
  readonly names: readonly string[];
  readonly finished: readonly Finished[];
  /** Them, and what failed and never was good, as the list of boards shows them. */
  readonly listed: readonly StoredRevision[];
  readonly files: readonly string[];
}

/**
 * What stays of the earlier output: all others where the run is limited, else packets of specs that cannot be built now. What was
 * taken out of the designs folder is gone from a full run.
 * @param made  names of what this run made or took from a shelf
 */
export async function keptPackets(
  task: Task,
  made: ReadonlySet<string>,
  failures: readonly CalculationFailure[],
): Promise<Kept> {
  const { out, only } = task.options;
  const failing = new Map(failures.map((one) => [nameOf(one), one]));
  const earlier = await filesIn(out);
  const packets = earlier.filter((path) => path.endsWith('/packet.html')).map((path) => dirname(path));
  const names = packets.filter((name) => !made.has(name) && (only.length > 0 || failing.has(name)));
  const recorded = new Map((await readRecord(out)).map((one) => [nameOf(one), one]));
  const finished = names.flatMap((name) => recorded.get(name) ?? calculatedAgain(task, name));
  const known = new Set(finished.map(nameOf));
  return {
    names,
    finished,
    listed: [
      ...finished.map((one) => listedAsKept(one, failing.get(nameOf(one))?.failure)),
      ...failures
        .filter((one) => !known.has(nameOf(one)))
        .map(({ board, revision, failure }) => ({ board, revision, files: {}, failure })),
    ],
    files: earlier.filter(keepFolders(names)),
  };
}

/** For the list of boards only, where the earlier output was made by another version of the tool. */
function calculatedAgain({ all, book, options }: Task, name: string): Finished[] {
  const design = all.find((one) => nameOf(one) === name);
  const one = design && packetFor(design, book, options);
  if (!one || 'failure' in one) return [];
  return [{ board: one.board, revision: one.revision, head: headOf(one.packet), remarks: [] }];
}
