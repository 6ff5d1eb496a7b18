import { writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { loadHandbook } from '../site/handbook-files.ts';
import { type Options, usualOptions } from '../site/options.ts';
import { loadSafety } from '../site/safety-files.ts';
import { schemaName, schemaText } from '../site/schema-file.ts';
import { type ExitStatus, run } from './run.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Writes the editor's schema: at the root of this project, or into the designs folder that was named, its own methods included. */
async function schema({ designs }: Options): Promise<ExitStatus> {
  const path = join(designs === usualOptions.designs ? root : designs, schemaName);
  await writeFile(path, schemaText(loadHandbook(designs), loadSafety()));
  console.log(`${relative(process.cwd(), path)} is written.`);
  return 0;
}

await run(schema);
