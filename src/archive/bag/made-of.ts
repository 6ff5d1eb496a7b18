import { z } from 'zod';
import { ZipError } from './zip.ts';

const folderName = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._-]*$/);

const madeOf = z.strictObject({
  format: z.literal('copperplate-archive/1'),
  tool: z.string(),
  /** SHA-256 of package-lock.json, which pins every package. */
  lock_sha256: z.string(),
  /** `inputsDigest` of the tool's own files. */
  code_sha256: z.string(),
  /** The runtime, which the lock file pins too: `v24.21.0`. */
  node: z.string(),
  /** Version of the browser that printed. */
  browser: z.string(),
  board: folderName,
  revision: folderName,
  inputs_sha256: z.string(),
  seed: z.int(),
  /** As asked for; where nothing was asked for, as many boards as the digits printed need. */
  trials: z.int().exactOptional(),
  paper: z.enum(['A4', 'Letter']),
  /** Date of everything in it that carries one: `2026-03-18`. */
  dated: z.string(),
  /** Set where that date was not the spec's own, but asked for by SOURCE_DATE_EPOCH. */
  source_date_epoch: z.string().regex(/^\d+$/).exactOptional(),
});

/** What an archive was made with and from: the file `data/tool/tool.json`. The same values give the same bytes. */
export type MadeOf = Readonly<z.output<typeof madeOf>>;

/** What has to be the same for the same bytes, in words. */
const makers = {
  tool: 'Copperplate',
  lock_sha256: 'package-lock.json with SHA-256',
  code_sha256: 'source files with SHA-256',
  node: 'Node',
  browser: 'printing browser',
} as const;
type Maker = keyof typeof makers;

/** What another tool than `here` would be needed to make the archive again; empty when `here` will do. */
export function otherMakers(made: MadeOf, here: Readonly<Partial<Record<Maker, string>>>): string[] {
  return (Object.keys(makers) as Maker[])
    .filter((key) => here[key] !== undefined && here[key] !== made[key])
    .map((key) => `${makers[key]} ${made[key]}, here ${here[key]}`);
}

/** @throws ZipError when the archive does not say what made it, in the form that is known here */
export function readMadeOf(files: ReadonlyMap<string, Uint8Array>): MadeOf {
  const bytes = files.get('data/tool/tool.json');
  if (!bytes) throw new ZipError('data/tool/tool.json, which says what made it, is not in it.');
  const read = madeOf.safeParse(parsed(Buffer.from(bytes).toString('utf8')));
  if (read.success) return read.data;
  const at = read.error.issues[0]?.path.join('.');
  throw new ZipError(`data/tool/tool.json is not of the form copperplate-archive/1${at ? `, at ${at}` : ''}.`);
}

function parsed(content: string): unknown {
  try {
    return JSON.parse(content);
  } catch {
    return undefined;
  }
}
