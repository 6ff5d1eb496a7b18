import { type DigestFile, digestListing, sha256 } from '../archive/digest.ts';
import type { Board } from '../spec/board.ts';
import type { ReadSpec } from '../spec/read-spec.ts';
import type { DesignFolder } from './designs.ts';

/**
 * File beside a spec that says what the revision was released with, in the form of sha256sum: `sha256sum --ignore-missing -c
 * released.sha256` checks the revision's own files with it, and its own SHA-256 is the digest of the inputs.
 */
export const releaseRecord = 'released.sha256';

/** Measured on boards that were built to the released design, so it comes after the release and changes nothing of it. */
const afterRelease = 'bench.csv';

/** What a release record says of these inputs. */
export const releaseListing = (inputs: readonly DigestFile[]): string =>
  digestListing(inputs.filter(({ name }) => name !== afterRelease));

/**
 * Why a revision that was released may not be built as it stands: its inputs are not those of the release. Undefined where they
 * are, or it was never released. A status that was taken back changes nothing: what was handed out stays handed out.
 */
export function changedAfterRelease(
  design: DesignFolder,
  board: Board,
  inputs: readonly DigestFile[],
  locate: ReadSpec['locate'],
): ReturnType<ReadSpec['locate']> | undefined {
  const { released } = design;
  const now = releaseListing(inputs);
  if (released === undefined || released === now) return undefined;
  const changed = changedNames(released, now);
  const own = changed.filter((name) => design.files.has(name) || !name.includes('/'));
  const next = `npm run new -- ${design.board} --from ${design.revision}`;
  return locate('status', {
    code: 'changed-after-release',
    found: `inputs with the digest ${sha256(now)} (changed: ${changed.join(', ') || 'the record itself'})`,
    expected: `those that revision ${board.identity.mark} was released with, digest ${sha256(released)}, as ${releaseRecord} beside it says`,
    hint: own.length
      ? `A released revision stays as it is: put it back, and change a new one, made with \`${next}\`.`
      : `The tool's own methods changed since. Build it with the version that released it, which its archive names, or make a new revision with \`${next}\`.`,
  });
}

/** Names that stand in one listing only, or with another digest. */
function changedNames(before: string, now: string): string[] {
  const [old, current] = [entries(before), entries(now)];
  const names = new Set([...old.keys(), ...current.keys()]);
  return [...names].filter((name) => old.get(name) !== current.get(name)).sort();
}

const entries = (listing: string): Map<string, string> =>
  new Map([...listing.matchAll(/^([0-9a-f]{64}) [ *](.+)$/gm)].map(([, digest, name]) => [name!, digest!]));
