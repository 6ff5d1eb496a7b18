import { join } from 'node:path';
import { cautionBlock } from '../packet/caution-block.ts';
import { packetFiles } from '../packet/files.ts';
import { packetOf } from '../packet/packet-of.ts';
import { type Book, calculate, calculateAsItStands, type Revision } from './calculate.ts';
import type { Calculated } from './calculated.ts';
import { type DesignFolder, readDesigns } from './designs.ts';
import { releaseListing } from './frozen.ts';
import { loadHandbook } from './handbook-files.ts';
import { currentOptions, type Options } from './options.ts';

/** Every revision that was asked for, as a packet or as the reason why there is none. */
export async function calculateAll(options: Options = currentOptions()): Promise<Calculated[]> {
  const book = loadHandbook(options.designs);
  return readDesigns(options.designs, options.only).map((design) => packetFor(design, book, options));
}

/** One revision as a packet, or as the reason why there is none. */
export function packetFor(design: DesignFolder, book: Book, options: Options): Calculated {
  const watch = [...[...design.files.keys()].map((name) => join(design.folder, name)), ...book.paths];
  const { board, revision } = design;
  const found = calculate(design, book, options);
  if ('failure' in found) return { board, revision, failure: found.failure, watch };
  const previous = supersededBy(found, book, options);
  const packet = packetOf(found.board, found.findings, {
    cautions: found.cautions.shown.map(cautionBlock),
    considered: found.cautions.considered,
    ...(previous ? { previous } : {}),
  });
  const origin = {
    inputs: found.inputs,
    ...(previous ? { superseded: { revision: previous.design.revision, files: previous.design.files } } : {}),
  };
  return {
    board,
    revision,
    packet,
    watch,
    origin,
    files: packetFiles(found.board, found.findings, packet),
    release: releaseListing(found.inputs),
  };
}

/** The revision that this one replaces, if it stands beside it and can be calculated. */
function supersededBy({ design, board }: Revision, book: Book, options: Options): Revision | undefined {
  const name = board.identity.supersedes;
  if (!name) return undefined;
  const other = readDesigns(options.designs).find((d) => d.board === design.board && d.revision === name);
  const found = other && calculateAsItStands(other, book, options);
  return found && 'board' in found ? found : undefined;
}
