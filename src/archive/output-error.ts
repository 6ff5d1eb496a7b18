/** Writing the output failed. The message says what, where, what is left, and what to do. */
export class OutputError extends Error {
  override readonly name = 'OutputError';
}

const reasons: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full. Free some space and run the command again',
  EDQUOT: 'your quota of disk space is used up. Free some space and run the command again',
  EROFS: 'the disk can only be read. Name a folder that can be written with --out',
  EACCES: 'you are not allowed to write there. Change its permissions, or name another folder with --out',
  EPERM: 'the system does not allow it. Close programs that have the folder open, or name another with --out',
  EBUSY: 'another program has it open, or it is a mount point. Close the program, or name a folder inside with --out',
  ENOTEMPTY: 'another run put files there at the same moment. Run the command again',
  ENOTDIR: 'a file stands where a folder belongs. Move it away, or name another folder with --out',
  EEXIST: 'a file stands where a folder belongs. Move it away, or name another folder with --out',
  EXDEV: 'it lies on another disk than the folder beside it. Name a folder that is not a mount point with --out',
  EMFILE: 'too many files are open. Close some programs and run the command again',
};

/**
 * Turns a file system error into a message for people; other errors come back as they are.
 * @param doing   `Swapping in the new pages`
 * @param intact  what the user still has: `dist/ is as it was.`
 * @example outputError(full, 'Building the pages', 'dist is as it was.').message
 * // 'Building the pages failed at /mnt/dist.new: the disk is full. Free some space and run the command again. dist is as it was.'
 */
export function outputError(error: unknown, doing: string, intact: string): unknown {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return error;
  // Of a copy or a move, the place that is written to.
  const named = [at(error, 'dest'), at(error, 'path')].find((path) => path !== undefined);
  const path = named === undefined ? '' : ` at ${named}`;
  const reason = reasons[error.code];
  if (reason === undefined) return error;
  return new OutputError(`${doing} failed${path}: ${reason}. ${intact}`.trimEnd(), { cause: error });
}

function at(error: Error, key: 'dest' | 'path'): string | undefined {
  const value: unknown = (error as NodeJS.ErrnoException & { readonly dest?: unknown })[key];
  return typeof value === 'string' ? value : undefined;
}
