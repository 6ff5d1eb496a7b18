import type { Block } from './block.ts';
import type { Strip } from './strip.ts';
import type { Text, Verdict } from './text.ts';

/** One revision's review packet as data: what to say and in what order, before any markup. */
export interface Packet {
  /** Folder names: `orchard-cart`, `rev-b`. */
  readonly board: string;
  readonly revision: string;
  readonly title: string;
  readonly document: string;
  /** As printed: `B`. */
  readonly revisionMark: string;
  readonly purpose: string;
  readonly status: 'draft' | 'for review' | 'released';
  readonly issued: string;
  readonly language: string;
  readonly owner?: string;
  /** Folder name of the revision this one replaces: `rev-a`. */
  readonly supersedes?: string;
  readonly verdict: Verdict;
  /** `strip` is in per cent of the limit, on the scale of the list of boards: −10 to 40. */
  readonly thinnest?: { readonly margin: string; readonly check: string; readonly strip?: Strip };
  readonly yield?: string;
  /** Counts in words, for the list of boards: `57 checks: 4 marginal, 1 accepted`, `1 danger, 15 warnings`. */
  readonly counts?: { readonly checks: string; readonly cautions: string };
  /** Circuits that use a method of the handbook, in the order of the packet. */
  readonly methods: readonly { readonly method: string; readonly circuit: string; readonly title: string }[];
  /** Whole SHA-256 of the inputs, and what stands at every page foot. */
  readonly digest: string;
  readonly foot: { readonly status: string; readonly origin: string };
  readonly chapters: readonly Chapter[];
}

/** A chapter answers one question that somebody in the room asks. One with nothing to say is left out. */
export interface Chapter {
  readonly number: number;
  /** File name of its page on screen: `summary`. `cover` and `contents` have a layout of their own. */
  readonly slug: string;
  readonly title: string;
  readonly question: string;
  readonly blocks: readonly Block[];
  readonly sections: readonly Section[];
  readonly landscape?: boolean;
  /** Each section starts on a page of its own, on screen and on paper, and is named in the running head. */
  readonly sectionPages?: boolean;
}

export interface Section {
  /** Anchor, unique in the packet: the circuit's name, `bus_sense`. */
  readonly id: string;
  /** `7.4` */
  readonly number: string;
  readonly title: string;
  readonly mark?: { readonly verdict: Verdict; readonly margin: string; readonly deviation?: string };
  /** What a reader on paper looks it up by, in the contents: the circuit's name. */
  readonly key?: string;
  /** Its equations, `7.62` to `7.80`, for the running head: they are numbered through the chapter. */
  readonly equations?: readonly [first: string, last: string];
  /** Stands in the margin at the section's head. */
  readonly aside: readonly Text[];
  readonly blocks: readonly Block[];
}
