import type { Findings } from '../analysis/findings.ts';
import type { Board } from '../spec/board.ts';
import { cautionCounts } from './chapters/cautions.ts';
import { chaptersOf } from './chapters/index.ts';
import { countsText, deciding } from './chapters/summary.ts';
import { marginText } from './margins.ts';
import { yieldText } from './numbers.ts';
import type { Packet } from './packet.ts';
import { type PacketOptions, type Review, reviewOf } from './review.ts';
import { marginStrip } from './strips.ts';
import { capital, tallied } from './words.ts';

export type { PacketOptions } from './review.ts';

/**
 * The review packet of one revision as data: what each chapter says, with every number already printed. Pure; the same
 * board, findings and options give the same packet.
 * @throws Error when the findings are not of this board
 * @example packetOf(board, find(board, options)).chapters[0].slug // 'cover'
 */
export function packetOf(board: Board, findings: Findings, options: PacketOptions = {}): Packet {
  if (findings.board !== board.name || findings.revision !== board.revision) {
    throw new Error(
      `The findings are of ${findings.board}/${findings.revision}, the board is ${board.name}/${board.revision}.`,
    );
  }
  const review = reviewOf({ board, findings }, options);
  const { identity } = board;
  return {
    board: board.name,
    revision: board.revision,
    title: identity.title,
    document: identity.document,
    revisionMark: identity.mark,
    purpose: identity.purpose,
    status: identity.status,
    issued: identity.issued,
    language: identity.language,
    ...(identity.supersedes ? { supersedes: identity.supersedes } : {}),
    verdict: findings.verdict,
    ...thinnest(review),
    ...(findings.yield ? { yield: yieldText(findings) } : {}),
    counts: {
      checks: `${tallied(findings.checks.length, 'check')}: ${countsText(findings.checks) || 'none'}`,
      cautions: cautionCounts(review.cautions).join(', ') || 'none worked out',
    },
    methods: board.circuits.flatMap(({ id, title, method }) =>
      method ? [{ method: method.id, circuit: id, title }] : [],
    ),
    digest: findings.inputs_sha256,
    foot: {
      status: `${capital(identity.status)}. Uncontrolled when printed.`,
      origin: `inputs ${findings.inputs_sha256.slice(0, 12).replaceAll(/(.{4})(?=.)/g, '$1 ')} · Copperplate ${findings.tool} · seed ${findings.seed}`,
    },
    chapters: chaptersOf(review),
  };
}

function thinnest(review: Review): Pick<Packet, 'thinnest'> {
  const worst = deciding(review);
  if (!worst) return {};
  const strip = marginStrip(worst, [-10, 40]);
  return { thinnest: { margin: marginText(worst), check: worst.id, ...(strip ? { strip } : {}) } };
}
