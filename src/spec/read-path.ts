import type { PathPlace } from './board.ts';
import type { stations } from './circuit-schema.ts';
import type { Report } from './report.ts';
import { meant } from './schema-problems.ts';
import type { Path } from './yaml-file.ts';

/** A station as typed: symbols of the circuit that say what flows, what heat arises and how hot it gets. */
export interface PathSpec {
  readonly station: (typeof stations)[number];
  readonly current: string;
  readonly heat?: string | undefined;
  readonly temperature?: string | undefined;
}

/** The station with ids for its symbols. */
export function pathPlace(circuit: string, { station, current, heat, temperature }: PathSpec): PathPlace {
  return {
    station,
    current: `${circuit}.${current}`,
    ...(heat ? { heat: `${circuit}.${heat}` } : {}),
    ...(temperature ? { temperature: `${circuit}.${temperature}` } : {}),
  };
}

/** Reports symbols of a station that the circuit does not know. */
export function checkPath(report: Report, at: Path, spec: PathSpec, known: readonly string[]): void {
  for (const key of ['current', 'heat', 'temperature'] as const) {
    const name = spec[key];
    if (name === undefined || known.includes(name)) continue;
    report.add([...at, key], {
      code: 'unknown-name',
      found: `\`${name}\``,
      expected: 'a symbol or a result of this circuit',
      ...meant(name, known),
    });
  }
}
