import { writeFile } from 'node:fs/promises';
import { relative } from 'node:path';
import { nameOf } from './finished.ts';
import type { Made } from './task.ts';

/** Writes down what newly released revisions were released with; only of those that were printed whole. */
export async function freeze({ releases, finished }: Pick<Made, 'releases' | 'finished'>): Promise<string[]> {
  const printed = new Set(finished.filter(({ pages }) => pages !== undefined).map(nameOf));
  const wanted = releases.filter((release) => printed.has(nameOf(release)));
  return Promise.all(
    wanted.map(async (release): Promise<string> => {
      const path = relative(process.cwd(), release.path);
      return writeFile(release.path, release.listing, { flag: 'wx' }).then(
        () =>
          `${nameOf(release)} is released. ${path} says with which inputs; keep it with the spec, under version control.`,
        ({ code }: NodeJS.ErrnoException) =>
          `${path} could not be written (${code}), so nothing holds the release of ${nameOf(release)} to its inputs.`,
      );
    }),
  );
}
