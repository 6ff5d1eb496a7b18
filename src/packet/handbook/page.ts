import type { Section } from '../packet.ts';
import type { Text } from '../text.ts';

/** One page of the handbook as data: a method, or a table over all of them. */
export interface HandbookPage {
  /** File name of its page: `voltage-divider`. */
  readonly id: string;
  readonly title: string;
  /** Where on the board a method sits; tables over all methods sit nowhere. */
  readonly place?: string;
  /** The question it answers, in one line. */
  readonly question: string;
  readonly lead: Text;
  /** Stands in the margin beside the lead. */
  readonly aside: readonly Text[];
  readonly sections: readonly Section[];
}

/** Pages over all methods, in the order in which they are listed; a method cannot have one of these names. */
export const overview = ['index', 'symbols', 'derating', 'published'] as const;
