/**
 * A commented spec that builds as it stands, for an engineer to write over.
 * @param issued  date of issue, year-month-day
 */
export function starterSpec(board: string, issued: string): string {
  const title = board.replaceAll('-', ' ').replace(/^./, (first) => first.toUpperCase());
  return `# One file a revision. Every value is a quantity with its unit, a reference to another circuit, or an expression.
board: ${title}
document: DOC-1               # number of the document, in your own scheme
revision: A
issued: ${issued}            # the date of this issue, year-month-day
status: draft                 # draft | for review | released
purpose: >-
  What the board does, in one sentence.

conditions:                   # what every board must endure; the worst case is sought over all of it
  I_bus: 0 A to 20 A typ 5 A
  T_amb: -10 degC to 45 degC typ 25 degC   # what drifts follow where a circuit names no temperature of its own

margins:
  derating: commercial        # ecss | nasa | commercial, or a table of your own
  target: 10 %                # a check that holds by less is marginal

# requirements:               # the packet shows for each whether its checks hold
#   REQ-1: { says: The bus voltage shall be measured up to a full pack, shown by: bus_sense.full_scale }

circuits:
  bus_sense:                  # your name for it; others use its numbers as bus_sense.V_out
    title: Bus voltage to the converter input
    method: voltage-divider   # npm run new -- --list shows all; npm run method -- voltage-divider shows this one
    refs: { R_top: R1, R_bot: R2, C_f: C1 }    # designators on the schematic
    given:
      V_in: 9 V to 16.8 V typ 14.8 V           # a condition: from empty to full
      R_top: 100 kohm ±1 % ±100 ppm/K          # a part: tolerance, drift; it differs from board to board
      R_bot: 18 kohm ±1 % ±100 ppm/K age ±0.5 %
      C_f: 10 nF ±10 %
      V_fs: { is: 3.234 / 3.300 / 3.366 V, from: regulator data sheet, basis: guaranteed }   # min / typ / max
    why: 100 k keeps the standing drain under 0.2 mA.

  soft_start:                 # no method fits: write the equations here
    title: Soft-start time
    refs: { C_ss: C2 }
    given: { C_ss: 10 nF ±10 %, I_ss: 4 / 5 / 6 uA, V_ref: 0.8 V ±1.5 % }
    equations:
      t_ss: { is: C_ss * V_ref / I_ss, unit: ms, says: Ramp time of the output }
    checks:
      ramp: { holds: t_ss >= 1 ms, because: a faster ramp trips the supply's current limit }

# safety:                     # facts that no equation gives; silence is unknown, and unknown shows a caution
#   has_pack: yes
#   has_fuse: yes
`;
}
