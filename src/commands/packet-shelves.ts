import { join } from 'node:path';
import { putOn, type Shelved, takeFrom } from '../archive/shelf.ts';
import { cacheFolder } from '../site/cache-folder.ts';
import type { DesignFolder } from '../site/designs.ts';
import { revisionKey, surroundings } from '../site/revision-key.ts';
import type { Finished } from './finished.ts';
import type { Task } from './task.ts';

/** A finished packet that an earlier run kept. */
export interface ShelvedPacket {
  readonly shelved: Shelved;
  readonly finished: Finished;
  /** What a record of its release has to say. */
  readonly release: string;
}

/** Finished packets, and what all of them share, by the digest of what they follow from. */
export class PacketShelves {
  /** Digest of what decides on every packet alike. */
  readonly around: string;
  readonly #task: Task;

  constructor(task: Task) {
    this.#task = task;
    this.around = surroundings(task.book, task.options, task.printer.identity);
  }

  /** Nothing where none was kept, it is damaged, or its release record says something else: calculating it says what. */
  async take(design: DesignFolder): Promise<ShelvedPacket | undefined> {
    if (this.#task.options.fresh) return undefined;
    const shelved = await takeFrom(shelfOf(design), this.#keyOf(design));
    if (!shelved) return undefined;
    const { finished, release } = shelved.about as Omit<ShelvedPacket, 'shelved'>;
    if (design.released !== undefined && design.released !== release) return undefined;
    return { shelved, finished, release };
  }

  /** Keeps the packet that lies in `folder`. */
  async put(design: DesignFolder, folder: string, about: Omit<ShelvedPacket, 'shelved'>): Promise<void> {
    await putOn(shelfOf(design), this.#keyOf(design), folder, () => true, about);
  }

  async takeFront(key: string): Promise<Shelved | undefined> {
    return this.#task.options.fresh ? undefined : takeFrom(front(), key);
  }

  async putFront(key: string, site: string, paths: readonly string[]): Promise<void> {
    const wanted = new Set(paths);
    await putOn(front(), key, site, (path) => wanted.has(path), {});
  }

  #keyOf(design: DesignFolder): string {
    return revisionKey(design, this.#task.all, this.around);
  }
}

const shelfOf = ({ board, revision }: DesignFolder): string => join(cacheFolder('packets'), board, revision);
const front = (): string => join(cacheFolder('packets'), '_front');
