/** Areas of a section or a plan, from corner to corner. */
const rect = (kind: string, x: number, y: number, width: number, height: number): string =>
  `<rect class="drawn-${kind}" x="${x}" y="${y}" width="${width}" height="${height}"/>`;

/** Block with named pins. */
export const box = (x: number, y: number, width: number, height: number): string => rect('box', x, y, width, height);
/** Copper, cut or seen from above. */
export const copper = (x: number, y: number, width: number, height: number): string =>
  rect('copper', x, y, width, height);
/** Laminate between layers of copper. */
export const laminate = (x: number, y: number, width: number, height: number): string =>
  rect('laminate', x, y, width, height);
/** Body of a part, a sink or a housing. */
export const solid = (x: number, y: number, width: number, height: number): string =>
  rect('solid', x, y, width, height);
