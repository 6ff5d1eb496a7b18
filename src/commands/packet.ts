import { madeDate } from '../archive/made-date.ts';
import { DesignsError, readDesigns } from '../site/designs.ts';
import { loadHandbook } from '../site/handbook-files.ts';
import { type Options, UsageError } from '../site/options.ts';
import { statusOf } from './exit-status.ts';
import { freeze } from './freeze.ts';
import { makePackets } from './make-packets.ts';
import { findPrinter } from './printer.ts';
import { Progress } from './progress.ts';
import { type ExitStatus, run } from './run.ts';
import { summary } from './summary.ts';

/** Calculates, builds the site, prints, archives and puts all in the output folder; what fails leaves the earlier output. */
async function packet(options: Options): Promise<ExitStatus> {
  refuseDate();
  const book = loadHandbook(options.designs);
  const all = readDesigns(options.designs);
  const asked = readDesigns(options.designs, options.only);
  if (!asked.length)
    throw new DesignsError(
      `found no design in ${options.designs}; expected <board>/<revision>/spec.yaml. \`npm run new -- my-board\` makes one.`,
    );
  const progress = new Progress(options.quiet);
  const printer = await findPrinter();
  const made = await makePackets({ asked, all, book, options, progress, printer }).finally(async () => {
    progress.end();
    await printer.close();
  });
  for (const { failure } of made.failures) console.error(`${failure}\n`);
  if (!made.finished.length) return 2;
  console.log(summary(made.finished, options));
  for (const remark of new Set([...made.finished.flatMap(({ remarks }) => remarks), ...(await freeze(made))]))
    console.error(remark);
  if (made.failures.length) return 2;
  if (made.finished.some(({ pages }) => pages === undefined)) return 3;
  return statusOf(
    made.finished.map(({ board, revision, head: { verdict, supersedes } }) => ({
      board,
      revision,
      verdict,
      supersedes,
    })),
  );
}

function refuseDate(): void {
  try {
    madeDate('2026-01-01', process.env.SOURCE_DATE_EPOCH);
  } catch (error) {
    throw new UsageError((error as RangeError).message);
  }
}

await run(packet);
