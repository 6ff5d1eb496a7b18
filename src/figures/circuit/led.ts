import { diode } from './diode.ts';
import { arrowHead, wire } from './pen.ts';

const ray = (x: number): string => wire(`M${x} -9l4.5-6`) + arrowHead(x + 6, -17, [0.6, -0.8], 4.5);

/** Light-emitting diode: two rays leave it. */
export const led = (length: number): string => diode(length) + ray(-4) + ray(2);
