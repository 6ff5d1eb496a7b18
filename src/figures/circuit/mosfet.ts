import { filled, outline, plate, tap, wire } from './pen.ts';

/**
 * N-channel transistor of the enhancement type, without envelope: drain at the left end, source at the right, gate above. The
 * body is tied to the source, and the body diode stands on the other side, its cathode at the drain.
 * @param gate  distance of the gate's end from the axis
 */
export function mosfet(length: number, gate: number): string {
  const leads = wire(`M${-length / 2} 0H-8V-8M${length / 2} 0H8V-8M0-8V0H8`);
  const control = tap(`M0 ${-gate}V-13.5`);
  const channel = plate('M-12-8h7M-3.5-8h7M5-8h7') + plate('M-9.5-13h19');
  const body = filled('M0-7.4l-2.6 5.6h5.2z');
  const diode = tap('M-13 0V11.5H-4.5M13 0V11.5H4') + outline('M4.5 7v9l-8.5-4.5z') + plate('M-4.5 6.7v9.6');
  return leads + control + channel + body + diode + dot(-13) + dot(13);
}

const dot = (x: number): string => `<circle class="drawn-dot" cx="${x}" cy="0" r="1.6"/>`;
