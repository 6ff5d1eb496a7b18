import { dirname, join } from 'node:path';
import { sha256 } from '../archive/digest.ts';
import { filesIn, keepEarlier, keepFolders } from '../archive/keep-earlier.ts';
import type { Shelved } from '../archive/shelf.ts';
import type { CalculatedPacket, CalculationFailure, StoredRevision } from '../site/calculated.ts';
import type { DesignFolder } from '../site/designs.ts';
import { releaseRecord } from '../site/frozen.ts';
import { packetFor } from '../site/packets.ts';
import { buildPages } from './build-pages.ts';
import { finishOne } from './finish-one.ts';
import { type Finished, headOf, listed, nameOf, writeRecord } from './finished.ts';
import { inTurn } from './in-turn.ts';
import { keptPackets } from './kept-packets.ts';
import { NewOutput } from './new-output.ts';
import { PacketShelves } from './packet-shelves.ts';
import type { Made, Release, Task } from './task.ts';

/** Revisions that are held in memory at a time. */
const partSize = 20;
/** Prints at a time: the browser works in processes of its own. */
const prints = 2;
/** What the pages of every packet share. */
const shared = ['_astro', 'fonts'];

/**
 * Makes the packet of every revision that was asked for and swaps in the new output. Packets whose key is known from an earlier run
 * are taken as they are; the others are calculated, built, printed and archived a few at a time, and kept for the next run at
 * once, so that a run that is killed has not worked in vain. When nothing at all can be built, the output is not touched.
 */
export async function makePackets(task: Task): Promise<Made> {
  const output = new NewOutput(task.options.out, task.progress);
  const run = new Run(task, output);
  try {
    const todo = await run.reuse();
    const last = Math.max(0, Math.ceil(todo.length / partSize) - 1) * partSize;
    for (let at = 0; at < last; at += partSize) {
      const packets = run.calculate(todo.slice(at, at + partSize), at, todo.length);
      if (packets.length) await run.buildPart(packets, []);
    }
    await run.finish(run.calculate(todo.slice(last), last, todo.length));
    return run.made();
  } catch (error) {
    await output.abandon();
    throw error;
  } finally {
    await output.close();
  }
}

class Run {
  readonly #task: Task;
  readonly #output: NewOutput;
  readonly #shelves: PacketShelves;
  readonly #finished = new Map<string, Finished>();
  readonly #failures: CalculationFailure[] = [];
  readonly #releases: Release[] = [];
  /** Files of finished packets, by path in the site. */
  readonly #files = new Set<string>();
  readonly #reused: { readonly name: string; readonly shelved: Shelved }[] = [];
  #printed = 0;

  constructor(task: Task, output: NewOutput) {
    this.#task = task;
    this.#output = output;
    this.#shelves = new PacketShelves(task);
  }

  /** Takes finished packets from the shelves. Returns the designs that have none there. */
  async reuse(): Promise<DesignFolder[]> {
    const { asked, progress } = this.#task;
    const left: DesignFolder[] = [];
    for (const [i, design] of asked.entries()) {
      progress.stage('looking at', i + 1, asked.length, nameOf(design));
      const taken = await this.#shelves.take(design);
      if (!taken) {
        left.push(design);
        continue;
      }
      const name = nameOf(design);
      this.#reused.push({ name, shelved: taken.shelved });
      for (const file of taken.shelved.files) this.#files.add(`${name}/${file}`);
      this.#note(design, taken.finished, taken.release);
    }
    return left;
  }

  /** Those of some designs that give a packet; `before` were calculated before, of `all`. */
  calculate(designs: readonly DesignFolder[], before: number, all: number): CalculatedPacket[] {
    const { book, options, progress } = this.#task;
    return designs.flatMap((design, i) => {
      progress.stage('calculating', before + i + 1, all, nameOf(design));
      const one = packetFor(design, book, options);
      if ('packet' in one) return [one];
      this.#failures.push(one);
      return [];
    });
  }

  /** Builds some revisions into a part of the site, finishes them, and moves them into the new output. */
  async buildPart(packets: readonly CalculatedPacket[], others: readonly StoredRevision[]): Promise<void> {
    const { options, progress, printer, asked } = this.#task;
    await this.#output.folder();
    const part = await this.#output.part();
    const built = packets.map(({ board, revision, packet, files }) => ({ board, revision, packet, files }));
    const what = { built, listed: [...this.#listed(packets), ...others], finished: this.#files };
    await buildPages(part, join(dirname(part), 'notes'), what, options, progress);
    const all = asked.length - this.#reused.length - this.#failures.length;
    await inTurn(packets, prints, async (one) => {
      this.#printed += 1;
      progress.stage('printing', this.#printed, all, nameOf(one));
      await this.#add(one, await finishOne(part, one, options, printer));
    });
  }

  /** Builds the last part and what all packets share, brings over what stays, and swaps. */
  async finish(packets: readonly CalculatedPacket[]): Promise<void> {
    if (packets.length === 0 && this.#finished.size === 0) return;
    const { options, progress } = this.#task;
    const made = new Set([...this.#finished.keys(), ...packets.map(nameOf)]);
    // From here on no other run changes the earlier output.
    const site = await this.#output.folder();
    const kept = await keptPackets(this.#task, made, this.#failures);
    for (const file of kept.files) this.#files.add(file);
    await this.#addFront(packets, kept.listed);
    progress.stage('putting together');
    await this.#output.write(async () => {
      for (const { name, shelved } of this.#reused) await shelved.bringTo(join(site, name));
      if (kept.names.length) await keepEarlier(options.out, site, keepFolders([...kept.names, ...shared]));
      await writeRecord(site, [...this.#finished.values(), ...kept.finished]);
    });
    await this.#output.swapIn();
  }

  made(): Made {
    const finished = this.#task.asked.flatMap((design) => this.#finished.get(nameOf(design)) ?? []);
    return { finished, failures: this.#failures, releases: this.#releases };
  }

  /** What all packets share is kept too: where nothing changed, no page is built. */
  async #addFront(packets: readonly CalculatedPacket[], others: readonly StoredRevision[]): Promise<void> {
    const list = [...this.#listed(packets), ...others].map((one) => JSON.stringify(one)).sort();
    const key = sha256([this.#shelves.around, ...list].join('\n'));
    const shelved = packets.length ? undefined : await this.#shelves.takeFront(key);
    const site = await this.#output.folder();
    if (shelved) return this.#output.write(() => shelved.bringTo(site));
    await this.buildPart(packets, others);
    const paths = await filesIn(await this.#output.part());
    await this.#output.moveIn(paths);
    await this.#shelves.putFront(key, site, paths);
  }

  async #add(one: CalculatedPacket, finished: Finished): Promise<void> {
    const name = nameOf(one);
    const design = this.#task.asked.find((known) => nameOf(known) === name)!;
    const folder = join(await this.#output.folder(), name);
    await this.#output.moveIn([name]);
    for (const file of await filesIn(folder)) this.#files.add(`${name}/${file}`);
    this.#note(design, finished, one.release);
    if (finished.pages !== undefined) await this.#shelves.put(design, folder, { finished, release: one.release });
  }

  #note(design: DesignFolder, finished: Finished, release: string): void {
    this.#finished.set(nameOf(design), finished);
    if (finished.head.status !== 'released' || design.released !== undefined) return;
    const { board, revision } = design;
    this.#releases.push({ board, revision, path: join(design.folder, releaseRecord), listing: release });
  }

  #listed(packets: readonly CalculatedPacket[]): StoredRevision[] {
    const built = packets.map(({ board, revision, packet }) => ({
      board,
      revision,
      packet: headOf(packet),
      files: {},
    }));
    return [...[...this.#finished.values()].map((one) => listed(one)), ...built];
  }
}
