import type { SignalWord } from '../packet/block.ts';
import type { Verdict } from '../packet/text.ts';

/**
 * Shapes of the verdict marks on a square of 20 by 20, in the colour of the text round them.
 * Circles hold, squares do not; the more ink, the more there is to do.
 */
const shapes: Record<Verdict, string> = {
  pass: '<circle cx="10" cy="10" r="8" fill="none" stroke="currentColor" stroke-width="2"/>',
  marginal:
    '<circle cx="10" cy="10" r="8" fill="none" stroke="currentColor" stroke-width="2"/><path d="M10 2a8 8 0 0 0 0 16z" fill="currentColor"/>',
  fail: '<path fill="currentColor" fill-rule="evenodd" d="M1 1h18v18H1zM5 6.6 8.4 10 5 13.4 6.6 15 10 11.6 13.4 15 15 13.4 11.6 10 15 6.6 13.4 5 10 8.4 6.6 5z"/>',
  accepted: '<path fill="none" stroke="currentColor" stroke-width="2" d="M2 2h16v16H2zM2 18 18 2"/>',
  'not assessed':
    '<circle cx="10" cy="10" r="8" fill="none" stroke="currentColor" stroke-width="2" stroke-dasharray="2.6 3.683"/>',
};

/** The words that always stand beside the marks. */
export const verdictWords: Record<Verdict, string> = {
  pass: 'pass',
  marginal: 'marginal',
  fail: 'FAIL',
  accepted: 'accepted',
  'not assessed': 'not assessed',
};

/** SVG of a verdict's mark, silent to screen readers: its word stands beside it. */
export function markSvg(verdict: Verdict): string {
  return `<svg class="mark" viewBox="0 0 20 20" aria-hidden="true">${shapes[verdict]}</svg>`;
}

/** Triangle of a signal word; a notice has none, for it speaks of things. */
export function signalSvg(level: SignalWord): string {
  if (level === 'notice') return '';
  const triangle =
    'M10 1.2a1.3 1.3 0 0 1 1.1.65l8.2 14.4a1.3 1.3 0 0 1-1.1 1.95H1.8a1.3 1.3 0 0 1-1.1-1.95L8.9 1.85A1.3 1.3 0 0 1 10 1.2z';
  const exclamation = 'M8.9 6.2h2.2l-.35 6.2h-1.5zM10 13.4a1.2 1.2 0 1 1 0 2.4 1.2 1.2 0 0 1 0-2.4z';
  return `<svg class="signal-triangle" viewBox="0 0 20 19" aria-hidden="true"><path fill="currentColor" fill-rule="evenodd" d="${triangle}${exclamation}"/></svg>`;
}
