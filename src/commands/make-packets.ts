import { rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { sha256 } from '../archive/digest.ts';
import { filesIn, keepEarlier, keepFolders } from '../archive/keep-earlier.ts';
import { move } from '../archive/move.ts';
import { outputError } from '../archive/output-error.ts';
import { putOn, type Shelved, takeFrom } from '../archive/shelf.ts';
import { abandonOutput, beginOutput, swapIn } from '../archive/swap.ts';
import { cacheFolder } from '../site/cache-folder.ts';
import type { Book } from '../site/calculate.ts';
import type { CalculatedPacket, CalculationFailure, StoredRevision } from '../site/calculated.ts';
import type { DesignFolder } from '../site/designs.ts';
import { releaseRecord } from '../site/frozen.ts';
import type { Options } from '../site/options.ts';
import { packetFor } from '../site/packets.ts';
import { revisionKey, surroundings } from '../site/revision-key.ts';
import { openWorkshop } from '../site/workshop.ts';
import { buildPages } from './build-pages.ts';
import { finishOne } from './finish-one.ts';
import { type Finished, headOf, listed, listedAsKept, nameOf, readRecord, writeRecord } from './finished.ts';
import { inTurn } from './in-turn.ts';
import type { Printer } from './printer.ts';
import type { Progress } from './progress.ts';

export interface Task {
  readonly asked: readonly DesignFolder[];
  readonly all: readonly DesignFolder[];
  readonly book: Book;
  readonly options: Options;
  readonly progress: Progress;
  readonly printer: Printer;
}

export interface Release {
  readonly board: string;
  readonly revision: string;
  /** Where its record belongs, and what it has to say. */
  readonly path: string;
  readonly listing: string;
}

/** What came of the revisions that were asked for. */
export interface Made {
  readonly finished: readonly Finished[];
  readonly failures: readonly CalculationFailure[];
  /** Revisions whose release is not written down yet. */
  readonly releases: readonly Release[];
}

/** Revisions that are held in memory at a time. */
const partSize = 8;
/** Prints at a time: the browser works in processes of its own. */
const prints = 2;

/**
 * Makes the packet of every revision that was asked for and swaps in the new output. Packets whose key is known from an earlier run
 * are taken as they are; the others are calculated, built, printed and archived a few at a time, and kept for the next run at
 * once, so that a run that is killed has not worked in vain. When nothing at all can be built, the output is not touched.
 */
export async function makePackets(task: Task): Promise<Made> {
  const run = new Run(task);
  try {
    const todo = await run.reuse();
    const parts = Array.from({ length: Math.ceil(todo.length / partSize) }, (_, i) =>
      todo.slice(i * partSize, (i + 1) * partSize),
    );
    const last = parts.pop() ?? [];
    for (const part of parts) await run.buildPart(run.calculate(part));
    await run.finish(run.calculate(last));
    return run.made();
  } catch (error) {
    await run.abandon();
    throw error;
  } finally {
    await run.close();
  }
}

/** What the shelf says beside the files of a packet. */
interface About {
  readonly finished: Finished;
  readonly release: string;
}

class Run {
  readonly #task: Task;
  readonly #around: string;
  readonly #finished = new Map<string, Finished>();
  readonly #failures: CalculationFailure[] = [];
  readonly #releases: Release[] = [];
  /** Files of finished packets, by path in the site. */
  readonly #files = new Set<string>();
  readonly #reused: { readonly name: string; readonly shelved: Shelved }[] = [];
  #site: string | undefined;
  #workshop: Promise<string> | undefined;
  #calculated = 0;
  #printed = 0;
  #todo = 0;

  constructor(task: Task) {
    this.#task = task;
    this.#around = surroundings(task.book, task.options, task.printer.identity);
  }

  /** Takes finished packets from the shelf. Returns the designs that have none there. */
  async reuse(): Promise<DesignFolder[]> {
    const { asked, options, progress } = this.#task;
    if (options.fresh) return this.#left(asked);
    const left: DesignFolder[] = [];
    for (const [i, design] of asked.entries()) {
      progress.stage('looking at', i + 1, asked.length, nameOf(design));
      const shelved = await takeFrom(shelfOf(design), this.#keyOf(design));
      const about = shelved?.about as About | undefined;
      // A record that says something else is a release that was broken; calculating it says how.
      const broken = design.released !== undefined && design.released !== about?.release;
      if (!shelved || !about || broken) left.push(design);
      else {
        this.#reused.push({ name: nameOf(design), shelved });
        for (const file of shelved.files) this.#files.add(`${nameOf(design)}/${file}`);
        this.#note(design, about.finished, about.release);
      }
    }
    return this.#left(left);
  }

  #left(designs: readonly DesignFolder[]): DesignFolder[] {
    this.#todo = designs.length;
    return [...designs];
  }

  calculate(designs: readonly DesignFolder[]): CalculatedPacket[] {
    const { book, options, progress } = this.#task;
    return designs.flatMap((design) => {
      this.#calculated += 1;
      progress.stage('calculating', this.#calculated, this.#todo, nameOf(design));
      const one = packetFor(design, book, options);
      if ('packet' in one) return [one];
      this.#failures.push(one);
      return [];
    });
  }

  /** Builds some revisions into a part of the site, finishes them, and moves them into the whole. */
  async buildPart(packets: readonly CalculatedPacket[], others: readonly StoredRevision[] = []): Promise<void> {
    if (packets.length === 0 && others.length === 0 && this.#finished.size === 0) return;
    const { options, progress, printer } = this.#task;
    await this.#begin();
    const part = await this.#part();
    await buildPages(
      part,
      join(dirname(part), 'notes'),
      {
        built: packets.map(({ board, revision, packet, files }) => ({ board, revision, packet, files })),
        listed: [...this.#listed(packets), ...others],
        finished: this.#files,
      },
      options,
      progress,
    );
    await inTurn(packets, prints, async (one) => {
      this.#printed += 1;
      progress.stage('printing', this.#printed, this.#todo, nameOf(one));
      const finished = await finishOne(part, one, options, printer);
      await this.#moveIn(part, one, finished);
    });
  }

  /** Builds the last part and what all share, brings over what stays, and swaps. */
  async finish(packets: readonly CalculatedPacket[]): Promise<void> {
    if (packets.length === 0 && this.#finished.size === 0) return;
    const { options, progress } = this.#task;
    const kept = await this.#kept(packets);
    const site = await this.#begin();
    const earlier = await filesIn(options.out);
    for (const file of earlier.filter(keepFolders(kept.names))) this.#files.add(file);
    const list = [...this.#listed(packets), ...kept.listed].map((one) => JSON.stringify(one)).sort();
    const front = sha256([this.#around, ...list].join('\n'));
    const shelved = packets.length || options.fresh ? undefined : await takeFrom(frontShelf(), front);
    if (shelved) await shelved.bringTo(site);
    else {
      await this.buildPart(packets, kept.listed);
      await this.#moveFront(front);
    }
    progress.stage('putting together');
    for (const { name, shelved: packet } of this.#reused) await packet.bringTo(join(site, name));
    if (kept.names.length) await keepEarlier(options.out, site, keepFolders([...kept.names, ...shared]));
    await this.#guarded(() => writeRecord(site, [...this.#finished.values(), ...kept.finished]));
    await swapIn(options.out);
  }

  made(): Made {
    const finished = this.#task.asked.flatMap((design) => this.#finished.get(nameOf(design)) ?? []);
    return { finished, failures: this.#failures, releases: this.#releases };
  }

  async abandon(): Promise<void> {
    if (this.#site !== undefined) await abandonOutput(this.#task.options.out);
  }

  /** Clears away what is of no use when the run is over. */
  async close(): Promise<void> {
    const workshop = await this.#workshop?.catch(() => undefined);
    if (workshop !== undefined) await rm(workshop, { recursive: true, force: true }).catch(() => undefined);
  }

  async #part(): Promise<string> {
    this.#workshop ??= openWorkshop();
    return join(await this.#workshop, 'part');
  }

  async #guarded(work: () => Promise<void>): Promise<void> {
    const { out } = this.#task.options;
    await work().catch((error: unknown) => {
      throw outputError(error, 'Writing the output', `${out} is as it was.`);
    });
  }

  async #begin(): Promise<string> {
    const { options, progress } = this.#task;
    this.#site ??= await beginOutput(options.out, process.pid, (pid) =>
      progress.stage(`waiting for process ${pid}, which builds into the same folder`),
    );
    return this.#site;
  }

  #keyOf(design: DesignFolder): string {
    return revisionKey(design, this.#task.all, this.#around);
  }

  #note(design: DesignFolder, finished: Finished, release: string): void {
    this.#finished.set(nameOf(design), finished);
    if (finished.head.status !== 'released' || design.released !== undefined) return;
    const { board, revision } = design;
    this.#releases.push({ board, revision, path: join(design.folder, releaseRecord), listing: release });
  }

  async #moveIn(part: string, one: CalculatedPacket, finished: Finished): Promise<void> {
    const site = await this.#begin();
    const name = nameOf(one);
    await this.#guarded(() => move(join(part, name), join(site, name)));
    for (const file of await filesIn(join(site, name))) this.#files.add(`${name}/${file}`);
    const design = this.#task.asked.find((known) => nameOf(known) === name)!;
    this.#note(design, finished, one.release);
    if (finished.pages === undefined) return;
    await putOn(shelfOf(one), this.#keyOf(design), join(site, name), () => true, {
      finished,
      release: one.release,
    } satisfies About);
  }

  /** Moves what is left of the last part when its packets are gone from it: what all packets share. */
  async #moveFront(key: string): Promise<void> {
    const site = await this.#begin();
    const part = await this.#part();
    const paths = await filesIn(part);
    await this.#guarded(async () => {
      for (const path of paths) await move(join(part, path), join(site, path));
    });
    const front = new Set(paths);
    await putOn(frontShelf(), key, site, (path) => front.has(path), {});
  }

  /**
   * Packets of the earlier output that stay as they are: all others where the run is limited, else those of specs that cannot be
   * built now. What was taken out of the designs folder is gone from a full run.
   */
  async #kept(packets: readonly CalculatedPacket[]) {
    const { options } = this.#task;
    const built = new Set([...this.#finished.keys(), ...packets.map(nameOf)]);
    const failing = new Map(this.#failures.map((one) => [nameOf(one), one]));
    const earlier = new Set((await filesIn(options.out)).filter((path) => path.endsWith('/packet.html')).map(dirname));
    const names = [...earlier].filter((name) => !built.has(name) && (options.only.length > 0 || failing.has(name)));
    const recorded = new Map((await readRecord(options.out)).map((one) => [nameOf(one), one]));
    const finished = names.flatMap((name) => recorded.get(name) ?? this.#calculatedAgain(name));
    const shown = new Map(finished.map((one) => [nameOf(one), listedAsKept(one, failing.get(nameOf(one))?.failure)]));
    for (const [name, { board, revision, failure }] of failing)
      if (!shown.has(name)) shown.set(name, { board, revision, files: {}, failure });
    return { names, finished, listed: [...shown.values()] };
  }

  /** For the list of boards only, where the earlier output was made by another version of the tool. */
  #calculatedAgain(name: string): Finished[] {
    const { all, book, options } = this.#task;
    const design = all.find((one) => nameOf(one) === name);
    const one = design && packetFor(design, book, options);
    if (!one || 'failure' in one) return [];
    return [{ board: one.board, revision: one.revision, head: headOf(one.packet), remarks: [] }];
  }

  #listed(packets: readonly CalculatedPacket[]): StoredRevision[] {
    const built = packets.map(({ board, revision, packet }) => ({
      board,
      revision,
      packet: { ...packet, chapters: [] },
      files: {},
    }));
    return [...[...this.#finished.values()].map((one) => listed(one)), ...built];
  }
}

/** What the pages of every packet share. */
const shared = ['_astro', 'fonts'];

const shelfOf = ({ board, revision }: { readonly board: string; readonly revision: string }): string =>
  join(cacheFolder('packets'), board, revision);
const frontShelf = (): string => join(cacheFolder('packets'), '_front');
