import { nearest } from '../quantity/nearest.ts';
import { loadHandbook } from '../site/handbook-files.ts';
import { type Options, UsageError } from '../site/options.ts';
import { methodSheet } from './method-sheet.ts';
import { say } from './printable.ts';
import { type ExitStatus, run } from './run.ts';

/** Prints methods of the handbook: symbols, equations, checks, sources, and a circuit to paste. */
async function method({ only, designs }: Options): Promise<ExitStatus> {
  if (!only.length)
    throw new UsageError(
      'found no name; expected a method such as `npm run method -- voltage-divider`. `npm run new -- --list` shows them all.',
    );
  const { methods } = loadHandbook(designs);
  const sheets = only.map((name) => {
    const one = methods.get(name) ?? methods.get(name.replaceAll('_', '-'));
    if (one) return methodSheet(one, process.stdout.columns ?? 100);
    const near = nearest(name, methods.keys());
    const within = [...methods.keys()].filter((id) => name.length > 2 && id.includes(name.toLowerCase()));
    const meant = [...new Set([...near, ...within])].slice(0, 5).map((id) => `\`${id}\``);
    throw new UsageError(
      `found no method \`${name}\`; expected one of the handbook. ${meant.length ? `Did you mean ${meant.join(' or ')}?` : '`npm run new -- --list` shows them all.'}`,
    );
  });
  say(sheets.join('\n\n'));
  return 0;
}

await run(method);
