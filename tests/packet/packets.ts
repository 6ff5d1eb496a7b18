import { find } from '../../src/analysis/find.ts';
import type { Reviewed } from '../../src/packet/by-id.ts';
import type { Packet } from '../../src/packet/packet.ts';
import { type PacketOptions, packetOf } from '../../src/packet/packet-of.ts';
import { boardFrom } from '../spec/spec-text.ts';

const seen = new Map<string, Reviewed>();

/** A board of test, with what is found about it; `rest` follows the keys that every spec needs. */
export function reviewed(rest: string, trials = 2000): Reviewed {
  const key = `${trials}\n${rest}`;
  const known = seen.get(key);
  if (known) return known;
  const board = boardFrom(rest);
  const fresh = {
    board,
    findings: find(board, { seed: 1, trials, digest: '0123456789abcdef'.repeat(4), tool: '1.0.0' }),
  };
  seen.set(key, fresh);
  return fresh;
}

export function packetFrom(rest: string, options: PacketOptions = {}): Packet {
  const { board, findings } = reviewed(rest);
  return packetOf(board, findings, options);
}

/** A divider whose converter overflows at a full pack; other values of the lower resistor mend it. */
export const divider = (lower = '12.7 kohm', more = ''): string => `conditions:
  V_pack: 30 V to 42 V typ 36 V
  T_amb: -10 degC to 45 degC typ 25 degC
margins: { target: 10 % }
circuits:
  sense:
    title: Pack voltage to the converter
    refs: { R_top: R1, R_bot: R2 }
    why: Standing drain stays under 0.3 mA.
    given:
      V_in: V_pack
      R_top: { is: 150 kohm ±1 %, from: "data sheet, p. 3", basis: guaranteed }
      R_bot: { is: ${lower} ±1 %, basis: typical }
      V_fs: 3.3 V
    equations:
      V_out: { is: V_in * R_bot / (R_top + R_bot), unit: V, says: Voltage at the converter, source: ohm }
      P_top: { is: (V_in - V_out)^2 / R_top, unit: W, says: Heat in the upper resistor, source: ohm, heat: true }
    checks:
      full_scale: { holds: V_out <= V_fs, because: the converter clips above it }
      floor: { holds: V_out >= 1 V, because: below it the reading is noise }
    firmware: { V_PER_COUNT: V_fs / 2^12 * (R_top + R_bot) / R_bot }
    test points: { tap: { read: V_out, when: { V_in: 36 V } } }
    sources: { ohm: Ohm's law }
${more}`;
