import { outline, wire } from './pen.ts';

/**
 * Amplifier or comparator: inputs at the left, output at the right, drawn with its output's end at 0,0.
 * @param length  from inputs to output
 * @param plus, minus  heights of the inputs above the output; one is the other's opposite
 */
export function amplifier(length: number, plus: number, minus: number): string {
  const base = -length + 10;
  const half = Math.abs(plus) + 10;
  const sign = (y: number, path: string) => wire(`M${base + 4} ${-y}h5${path}`);
  return (
    wire(`M${-length} ${-plus}h10M${-length} ${-minus}h10M-10 0H0`) +
    outline(`M${base} ${-half}v${2 * half}L-10 0z`) +
    sign(plus, `m-2.5-2.5v5`) +
    sign(minus, '')
  );
}
