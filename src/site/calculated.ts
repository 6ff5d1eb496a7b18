import type { DigestFile } from '../archive/digest.ts';
import type { Packet } from '../packet/packet.ts';

/** What comes of one revision's spec: a packet with the files beside it, or the reason why there is none. */
export type Calculated = CalculatedPacket | CalculationFailure;

export interface CalculatedPacket {
  readonly board: string;
  readonly revision: string;
  readonly packet: Packet;
  /** Content of the files that stand beside the pages, by name: `results.json`, `margins.csv`, `constants.h`. */
  readonly files: Readonly<Record<string, string>>;
  /** Paths of the files it was calculated from. */
  readonly watch: readonly string[];
  /** What it was calculated from, as it goes into the archive. */
  readonly origin: Origin;
  /** What a record of its release has to say. */
  readonly release: string;
}

export interface Origin {
  /** What the digest of the inputs is over. */
  readonly inputs: readonly DigestFile[];
  /** The revision that it was compared with, by folder name, and its files. */
  readonly superseded?: { readonly revision: string; readonly files: ReadonlyMap<string, string> };
}

export interface CalculationFailure {
  readonly board: string;
  readonly revision: string;
  /** Plain text with file, line and column. */
  readonly failure: string;
  readonly watch?: readonly string[];
}

/** Revision as the pages know it. While a spec is edited, a failure stands beside the last good packet. */
export interface StoredRevision {
  readonly board: string;
  readonly revision: string;
  readonly packet?: Packet;
  readonly files: Readonly<Record<string, string>>;
  readonly failure?: string;
  /** Its pages stand in the earlier output, made by whatever tool made that. */
  readonly kept?: boolean;
}
