/** Strokes that all symbols share. A symbol is drawn in pixels along its axis: first end left, second right, middle at 0,0. */

export const wire = (path: string): string => `<path class="drawn-wire" d="${path}"/>`;
/** A lead that stays thin where the symbol carries the power current. */
export const tap = (path: string): string => `<path class="drawn-tap" d="${path}"/>`;
/** Outline of a body. */
export const outline = (path: string): string => `<path class="drawn-outline" d="${path}"/>`;
/** Plates, bars and channels. */
export const plate = (path: string): string => `<path class="drawn-plate" d="${path}"/>`;
export const filled = (path: string): string => `<path class="drawn-filled" d="${path}"/>`;
export const ring = (x: number, y: number, r: number): string =>
  `<circle class="drawn-outline" cx="${x}" cy="${y}" r="${r}"/>`;

/** From the ends, `length` apart, to the body, which begins `half` from the middle. */
export const leads = (length: number, half: number): string =>
  wire(`M${-length / 2} 0H${-half}M${half} 0H${length / 2}`);

/** Filled arrow head with its tip at a point, pointing along a unit vector. */
export function arrowHead(x: number, y: number, [ux, uy]: readonly [number, number], size = 6): string {
  const [bx, by] = [x - ux * size, y - uy * size];
  const [wx, wy] = [-uy * size * 0.36, ux * size * 0.36];
  return filled(`M${round(x)} ${round(y)}L${round(bx + wx)} ${round(by + wy)}L${round(bx - wx)} ${round(by - wy)}z`);
}

/** Two decimals are finer than any printer. */
export const round = (value: number): number => Number(value.toFixed(2));
