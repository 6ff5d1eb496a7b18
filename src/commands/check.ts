import type { Findings } from '../analysis/findings.ts';
import { calculate } from '../site/calculate.ts';
import { DesignsError, readDesigns } from '../site/designs.ts';
import { loadHandbook } from '../site/handbook-files.ts';
import { type Options, UsageError, useOptions } from '../site/options.ts';
import { type Outcome, statusOf } from './exit-status.ts';
import { marginsTable } from './margins-table.ts';
import { type ExitStatus, run } from './run.ts';

/** Calculates and prints the ranked margin table; with --json, results.json of one revision. Writes nothing. */
async function check(options: Options): Promise<ExitStatus> {
  useOptions(options);
  const designs = readDesigns(options.designs, options.only);
  if (!designs.length)
    throw new DesignsError(
      `found no design in ${options.designs}; expected <board>/<revision>/spec.yaml. \`npm run new -- my-board\` makes one.`,
    );
  if (options.json && designs.length !== 1)
    throw new UsageError(
      `found ${designs.length} revisions for --json; expected one, such as \`npm run check -- --json ${designs[0]!.board}/${designs[0]!.revision}\`.`,
    );
  const book = loadHandbook(options.designs);
  const outcomes: Outcome[] = [];
  let readable = true;
  for (const design of designs) {
    const found = calculate(design, book, options);
    if ('failure' in found) {
      console.error(found.failure);
      readable = false;
      continue;
    }
    outcomes.push({
      board: design.board,
      revision: design.revision,
      verdict: found.findings.verdict,
      supersedes: found.board.identity.supersedes,
      thinnest: thinnestOf(found.findings),
    });
    console.log(
      options.json
        ? JSON.stringify(found.findings, null, 1)
        : marginsTable(found.findings, process.stdout.columns ?? 120),
    );
  }
  return readable ? statusOf(outcomes, options.failUnder) : 2;
}

/** Least margin of the checks that nobody has accepted as they are. */
function thinnestOf({ checks }: Findings): number | undefined {
  const margins = checks.flatMap(({ margin, verdict }) => (margin === null || verdict === 'accepted' ? [] : [margin]));
  return margins.length ? Math.min(...margins) : undefined;
}

await run(check);
