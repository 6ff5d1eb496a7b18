import type { StoredRevision } from './calculated.ts';

/** What a command gives to the site's build, which runs in this process but has modules of its own. */
export interface HandedOver {
  /** Revisions whose pages are made. */
  readonly built: readonly StoredRevision[];
  /** All revisions for the list of boards, without their chapters. */
  readonly listed: readonly StoredRevision[];
  /** Files of packets that were finished before and will stand in the same site. */
  readonly finished: ReadonlySet<string>;
}

const place = Symbol.for('copperplate.handed-over');
type Holder = { [place]?: HandedOver };

export function handOver(what: HandedOver): void {
  (globalThis as Holder)[place] = what;
}

/** What was handed over; undefined where the site is built by itself. */
export const handedOver = (): HandedOver | undefined => (globalThis as Holder)[place];
