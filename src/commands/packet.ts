import { readdir, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { outputError } from '../archive/output-error.ts';
import { abandonOutput, beginOutput, swapIn } from '../archive/swap.ts';
import type { CalculatedPacket, CalculationFailure } from '../site/calculated.ts';
import { DesignsError } from '../site/designs.ts';
import { type Options, useOptions } from '../site/options.ts';
import { calculateAll } from '../site/packets.ts';
import { statusOf } from './exit-status.ts';
import { type Printed, printAll } from './print-all.ts';
import { Progress } from './progress.ts';
import { type ExitStatus, run } from './run.ts';
import { textTable } from './text-table.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Calculates, builds the site, prints the PDFs and puts all in the output folder; what fails leaves the earlier output. */
async function packet(options: Options): Promise<ExitStatus> {
  const progress = new Progress(options.quiet);
  useOptions(options);
  progress.stage('calculating');
  const calculated = await calculateAll(options);
  if (!calculated.length)
    throw new DesignsError(
      `found no design in ${options.designs}; expected <board>/<revision>/spec.yaml. \`npm run new -- my-board\` makes one.`,
    );
  const packets = calculated.filter((one) => 'packet' in one);
  const failures = calculated.filter((one) => 'failure' in one);
  progress.end();
  for (const { failure } of failures) console.error(`${failure}\n`);
  if (!packets.length) return 2;
  let unprinted = false;
  const site = await beginOutput(options.out);
  try {
    useOptions({ ...options, kept: await keptBy(options, packets, failures) });
    progress.stage('building pages', packets.length, packets.length);
    // Set before Astro is loaded: a shell that is set up for something else must not change what is built.
    process.env.NODE_ENV = 'production';
    const { build } = await import('astro');
    await build({ root, outDir: site, logLevel: 'error' }).catch((error: unknown) => {
      throw outputError(error, 'Building the site', `${options.out} is as it was.`);
    });
    const printed = await printAll(site, packets, options, progress);
    unprinted = printed.pdfs.size < packets.length;
    await swapIn(options.out);
    progress.end();
    console.log(summary(packets, printed, options));
    for (const remark of [...printed.remarks, ...(await freeze(packets, printed))]) console.error(remark);
  } catch (error) {
    progress.end();
    await abandonOutput(options.out);
    throw error;
  }
  if (failures.length) return 2;
  if (unprinted) return 3;
  return statusOf(
    packets.map(({ board, revision, packet: { verdict, supersedes } }) => ({ board, revision, verdict, supersedes })),
  );
}

/**
 * Packets of the earlier output that stay as they are: all others where the run is limited, else those of specs that cannot be
 * read now. What was taken out of the designs folder is gone from a full run.
 */
async function keptBy(
  options: Options,
  packets: readonly CalculatedPacket[],
  failures: readonly CalculationFailure[],
): Promise<string[]> {
  const built = new Set(packets.map(nameOf));
  const failing = new Set(failures.map(nameOf));
  const earlier = await revisionsIn(options.out);
  return earlier.filter((name) => !built.has(name) && (options.only.length > 0 || failing.has(name)));
}

const nameOf = ({ board, revision }: { readonly board: string; readonly revision: string }): string =>
  `${board}/${revision}`;

async function revisionsIn(out: string): Promise<string[]> {
  const folders = async (path: string) =>
    (await readdir(path, { withFileTypes: true }).catch(() => []))
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name);
  const boards = await folders(out);
  return (
    await Promise.all(
      boards.map(async (board) => (await folders(join(out, board))).map((revision) => `${board}/${revision}`)),
    )
  ).flat();
}

/** Writes down what newly released revisions were released with; only of those that were printed whole. */
async function freeze(packets: readonly CalculatedPacket[], printed: Printed): Promise<string[]> {
  const remarks = packets.map(async (one): Promise<string[]> => {
    if (!one.release || !printed.pdfs.has(nameOf(one))) return [];
    const path = relative(process.cwd(), one.release.path);
    return writeFile(one.release.path, one.release.listing, { flag: 'wx' }).then(
      () => [
        `${nameOf(one)} is released. ${path} says with which inputs; keep it with the spec, under version control.`,
      ],
      (error: NodeJS.ErrnoException) => [
        `${path} could not be written (${error.code}), so nothing holds the release to its inputs.`,
      ],
    );
  });
  return (await Promise.all(remarks)).flat();
}

function summary(packets: readonly CalculatedPacket[], printed: Printed, options: Options): string {
  const rows = packets.map(({ board, revision, packet: one }) => {
    const pdf = printed.pdfs.get(`${board}/${revision}`);
    return [
      board,
      revision,
      one.verdict === 'fail' ? 'FAIL' : one.verdict,
      one.thinnest?.margin ?? '–',
      one.yield ?? '–',
      pdf ? `${join(relative(process.cwd(), options.out) || '.', pdf.path)} (${pdf.pages} pages)` : 'not printed',
    ];
  });
  return textTable(['board', 'revision', 'verdict', 'thinnest', 'yield', 'packet'], rows);
}

await run(packet);
