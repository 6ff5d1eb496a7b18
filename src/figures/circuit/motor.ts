import { ring, round, wire } from './pen.ts';

/** Three-phase motor, its phases at the left two modules apart, the middle one at 0,0. */
export function motor(): string {
  const edge = round(35 - Math.sqrt(25 ** 2 - 20 ** 2));
  return `${wire(`M0-20H${edge}M0 0H10M0 20H${edge}`)}${ring(35, 0, 25)}<text class="drawn-sign" x="35" y="-1">M</text><text class="drawn-sign" x="35" y="12">3~</text>`;
}
