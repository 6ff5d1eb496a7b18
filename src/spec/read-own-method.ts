import { parseQuantity } from '../quantity/parse-quantity.ts';
import { TextError } from '../quantity/text-problem.ts';
import type { Handbook, Method } from './method-schema.ts';
import type { Problem } from './problem.ts';
import { readMethod } from './read-method.ts';
import { Report } from './report.ts';
import { workMethod } from './work-method.ts';
import { readYaml } from './yaml-file.ts';

/** How near a worked example must come to what it says, as a share: half a step of the fifth figure. */
const exactness = 5e-5;

/** A method that a company keeps beside its boards: as strict as the handbook, under a name of its own, its example worked out. */
export function readOwnMethod(
  text: string,
  file: string,
  id: string,
  place: string,
  { methods, policies }: Handbook,
): { method?: Method; problems: readonly Problem[] } {
  const read = readMethod(text, file, id, place);
  if (!read.method) return read;
  const report = new Report(readYaml(text, file));
  if (methods.has(id) || policies.has(id))
    report.add(['title'], {
      code: 'method-twice',
      found: `a method named \`${id}\`, which the handbook has already`,
      expected: 'a file name of its own',
      hint: `Rename the file, such as ${id}-own.yaml, and the \`method:\` of the circuits that use it.`,
    });
  reportExample(report, read.method, policies);
  return report.problems.length ? { problems: report.problems } : read;
}

function reportExample(report: Report, method: Method, policies: Handbook['policies']): void {
  const { given, gives } = method.example;
  let values: Record<string, number>;
  try {
    values = workMethod(method, given, policies);
  } catch (error) {
    report.add(['example', 'given'], {
      code: 'wrong-example',
      found: 'an example that cannot be worked out',
      expected: 'values that a board could give',
      hint: (error as Error).message.split('\n').slice(0, 2).join(' '),
    });
    return;
  }
  for (const [symbol, text] of Object.entries(gives))
    report.attempt(['example', 'gives', symbol], () => {
      const { typ, unit } = parseQuantity(text);
      const value = values[symbol]!;
      if (Math.abs(value - typ) <= exactness * Math.abs(typ)) return;
      const worked = Number(((value - unit.offset) / unit.scale).toPrecision(6));
      throw new TextError({
        code: 'wrong-example',
        start: 0,
        end: text.length,
        found: `\`${text}\``,
        expected: `what the equations give, \`${`${worked} ${unit.text}`.trim()}\``,
      });
    });
}
