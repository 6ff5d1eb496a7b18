import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { move } from '../archive/move.ts';
import { outputError } from '../archive/output-error.ts';
import { abandonOutput, beginOutput, swapIn } from '../archive/swap.ts';
import { openWorkshop } from '../site/workshop.ts';
import type { Progress } from './progress.ts';

/** The output that a run puts together, begun when there is something to put into it; `out` is as it was until it is swapped in. */
export class NewOutput {
  readonly #out: string;
  readonly #progress: Progress;
  #folder: Promise<string> | undefined;
  #workshop: Promise<string> | undefined;

  constructor(out: string, progress: Progress) {
    this.#out = out;
    this.#progress = progress;
  }

  folder(): Promise<string> {
    this.#folder ??= beginOutput(this.#out, process.pid, (pid) =>
      this.#progress.stage(`waiting for process ${pid}, which builds into the same folder`),
    );
    return this.#folder;
  }

  /** Where pages are built before they are moved into it. */
  async part(): Promise<string> {
    this.#workshop ??= openWorkshop();
    return join(await this.#workshop, 'part');
  }

  /** Moves files or folders from the part into the output. */
  async moveIn(paths: readonly string[]): Promise<void> {
    const [part, folder] = [await this.part(), await this.folder()];
    await this.write(async () => {
      for (const path of paths) await move(join(part, path), join(folder, path));
    });
  }

  /** Does something that writes to the output; says in words what the disk refuses. */
  async write(work: () => Promise<unknown>): Promise<void> {
    await work().catch((error: unknown) => {
      throw outputError(error, 'Writing the output', `${this.#out} is as it was.`);
    });
  }

  async swapIn(): Promise<void> {
    await swapIn(this.#out);
  }

  async abandon(): Promise<void> {
    if (await this.#folder?.catch(() => undefined)) await abandonOutput(this.#out);
  }

  /** Clears away what is of no use when the run is over. */
  async close(): Promise<void> {
    const workshop = await this.#workshop?.catch(() => undefined);
    if (workshop !== undefined) await rm(workshop, { recursive: true, force: true }).catch(() => undefined);
  }
}
