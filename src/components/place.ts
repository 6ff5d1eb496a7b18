import type { Packet } from '../packet/packet.ts';
import type { Links } from '../site/screen-pages.ts';

/** Where a block is laid out: in which packet, and how its page links to the rest of it. */
export interface Place {
  readonly packet: Packet;
  readonly links: Links;
  /** Level of a chapter's heading: 1 on a screen page of its own, 2 in the print document. */
  readonly level: 1 | 2;
}
