import type { CautionDecision } from '../spec/board.ts';
import { type Level, levels } from './safety-schema.ts';

/** What a board's spec has decided about a caution, as printed with it. */
export interface Decided {
  readonly is: 'raised' | 'lowered' | 'dismissed';
  readonly from: Level;
  readonly to?: Level;
  readonly reason?: string;
  readonly role?: string;
  readonly date?: string;
}

/** What is wrong with a decision about a caution of this level, in words; undefined where nothing is. */
export function faultOf(decision: CautionDecision, level: Level, mayBeDismissed: boolean): string | undefined {
  const signed = decision.reason !== undefined && decision.role !== undefined && decision.date !== undefined;
  if (decision.dismissed) {
    if (!mayBeDismissed) return 'it says what the packet is, and cannot be dismissed';
    return signed ? undefined : 'to dismiss it takes `reason`, `role` and `date`';
  }
  if (decision.level === undefined) return 'either `level` or `dismissed: yes` must stand there';
  return isBelow(decision.level, level) && !signed
    ? `to lower it from ${level} takes \`reason\`, \`role\` and \`date\``
    : undefined;
}

/**
 * A caution's level on this board, undefined where it is dismissed, and what was decided about it.
 * @throws Error for a decision with a fault; `safetyProblems` reports it beforehand, at its place
 */
export function decided(
  decision: CautionDecision | undefined,
  level: Level,
  mayBeDismissed: boolean,
): { level?: Level; decision?: Decided } {
  if (!decision) return { level };
  const fault = faultOf(decision, level, mayBeDismissed);
  if (fault) throw new Error(`${decision.id}: ${fault}.`);
  const { reason, role, date } = decision;
  const signed = { ...(reason ? { reason } : {}), ...(role ? { role } : {}), ...(date ? { date } : {}) };
  if (decision.dismissed) return { decision: { is: 'dismissed', from: level, ...signed } };
  const to = decision.level!;
  if (to === level) return { level };
  return { level: to, decision: { is: isBelow(to, level) ? 'lowered' : 'raised', from: level, to, ...signed } };
}

const isBelow = (a: Level, b: Level): boolean => levels.indexOf(a) > levels.indexOf(b);
