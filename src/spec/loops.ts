import type { DraftCircuit } from './read-circuit.ts';
import type { Report } from './report.ts';
import type { Path } from './yaml-file.ts';

/** Says of each loop where it can be entered, and what most likely made it. */
export function reportLoops(
  report: Report,
  loops: readonly (readonly string[])[],
  drafts: readonly DraftCircuit[],
  conditions: ReadonlySet<string>,
): void {
  const places = new Map<string, Path>(drafts.flatMap((draft) => [...draft.places]));
  for (const loop of loops) {
    // What a method says stands in no line of the spec: better to point at what the engineer wrote.
    const written = loop.findIndex((id) => places.get(id)?.at(-1) !== 'method');
    const round = [...loop.slice(Math.max(0, written)), ...loop.slice(0, Math.max(0, written))];
    const names = [...round, round[0]!].map((id) => `\`${id}\``);
    report.add(places.get(round[0]!) ?? [], {
      code: 'loop',
      found: loop.length === 1 ? `${names[0]}, which follows from itself` : `a loop: ${names.join(' needs ')}`,
      expected:
        loop.length === 1
          ? 'a value that follows from others, such as `3.3 V` or `pack.V_bat`'
          : 'equations that can be worked out one after another',
      hint: hintFor(round, drafts, conditions),
    });
  }
}

function hintFor(loop: readonly string[], drafts: readonly DraftCircuit[], conditions: ReadonlySet<string>): string {
  const hidden = loop.map((id) => id.split('.')).find(([, symbol]) => symbol !== undefined && conditions.has(symbol));
  if (hidden)
    return `Inside \`${hidden[0]}\`, \`${hidden[1]}\` is its own symbol and hides the condition \`${hidden[1]}\` of the board: give the condition another name.`;
  const inputs = new Map(drafts.flatMap((draft) => draft.inputs.map((input) => [input.id, input.value] as const)));
  const drifting = loop.find((id) => {
    const value = inputs.get(id);
    return value?.kind === 'part' && (value.quantity.drift ?? value.quantity.driftAbsolute);
  });
  if (drifting)
    return `\`${drifting}\` drifts with the temperature of its circuit, which follows from it: give the circuit a \`temperature\` that does not, such as \`T_amb + 20 K\`.`;
  return loop.length === 1
    ? 'Give it a number, or the symbol of another circuit.'
    : 'Solve the loop for one of its symbols and write that equation instead.';
}
