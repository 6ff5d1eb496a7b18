import type { Packet } from '../packet/packet.ts';
import type { Links } from '../site/screen-pages.ts';

/** Where a block is laid out: how its page links to the rest, and in which packet; a page of the handbook is in none. */
export interface Place {
  readonly packet?: Packet;
  readonly links: Links;
  /** Level of a chapter's heading: 1 on a screen page of its own, 2 in the print document, 0 where a section has the page. */
  readonly level: 0 | 1 | 2;
}

/** The packet of a block that stands in packets only, such as the cover. Throws an Error anywhere else. */
export function packetAround({ packet }: Place): Packet {
  if (!packet) throw new Error('A block that belongs to a packet stands outside of one.');
  return packet;
}
