import { TextError } from '../quantity/text-problem.ts';
import type { Problem } from './problem.ts';
import { valueAt } from './schema-problems.ts';
import type { Path, YamlFile } from './yaml-file.ts';

/** Collects every problem of one file, so that an engineer mends them all in one go. */
export class Report {
  readonly problems: Problem[] = [];
  readonly yaml: YamlFile;

  constructor(yaml: YamlFile) {
    this.yaml = yaml;
  }

  add(path: Path, what: Parameters<YamlFile['at']>[1], on: 'key' | 'value' = 'value'): void {
    this.problems.push(this.yaml.at(path, what, on));
  }

  /** The result of `read`, or undefined when the text at `path` could not be read and the problem has been noted. */
  attempt<T>(path: Path, read: () => T): T | undefined {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof TextError)) throw error;
      this.problems.push(this.yaml.within(path, error.problem));
      return undefined;
    }
  }
}

/** Whether the mapping at a path holds a key: a value may be written short, or long with its parts under keys. */
export function hasKey(report: Report, path: Path, key: string): boolean {
  const value = valueAt(report.yaml.data, path);
  return typeof value === 'object' && value !== null && Object.hasOwn(value, key);
}
