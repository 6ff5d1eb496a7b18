import { OutputError } from '../archive/output-error.ts';
import { DesignsError } from '../site/designs.ts';
import { HandbookError } from '../site/handbook-files.ts';
import { type Options, readOptions, UsageError } from '../site/options.ts';
import { SafetyError } from '../site/safety-files.ts';

/** What a command ends with: all checks hold or are accepted; some check fails; the input is wrong; the tool failed. */
export type ExitStatus = 0 | 1 | 2 | 3;

/** Runs a command with the options that were typed. */
export const run = (command: (options: Options) => Promise<ExitStatus>): Promise<void> =>
  runWords((words) => command(readOptions(words)));

/** Runs a command with the words that were typed; turns what an engineer can mend into a message, and sets the exit status. */
export async function runWords(command: (words: readonly string[]) => Promise<ExitStatus>): Promise<void> {
  try {
    process.exitCode = await command(process.argv.slice(2));
  } catch (error) {
    process.exitCode = report(error);
  }
}

function report(error: unknown): ExitStatus {
  if (
    error instanceof UsageError ||
    error instanceof DesignsError ||
    error instanceof HandbookError ||
    error instanceof SafetyError
  ) {
    console.error(`${error.message}`);
    return 2;
  }
  if (error instanceof OutputError) {
    console.error(error.message);
    return 3;
  }
  console.error(`copperplate failed: ${error instanceof Error ? error.message : String(error)}`);
  if (process.env.COPPERPLATE_DEBUG && error instanceof Error) console.error(error.stack);
  else
    console.error(
      'Set COPPERPLATE_DEBUG=1 and run it again to see where; please report it with the spec that does it.',
    );
  return 3;
}
