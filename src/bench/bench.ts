import { coldPipeline, coldSimulation } from './cold.ts';
import { type Contest, contest, contestOfTwo } from './contest.ts';
import { demoBoards } from './demo-boards.ts';
import { mathjsPerBoard } from './mathjs.ts';
import { median, timed } from './median.ts';
import { findNumpy, howToGetNumpy, Numpy } from './numpy.ts';
import { phasesOf } from './phases.ts';
import { contestLines, table } from './report.ts';
import { boardSubject, madeUpSubject, run, type Subject } from './subject.ts';

/** What `--json` prints: every ratio is ours ÷ NumPy's, `mathjs_eval` ours ÷ mathjs'; null where NumPy is missing. */
interface Report {
  ratios: Record<'mc_100k_1t' | 'mc_1m_1t' | 'mc_1m_2t' | 'cold_100k' | 'mathjs_eval', number | null>;
  memory_mb: { ours_1m: number; numpy_1m: number | null };
  pipeline_s: Record<string, number>;
}

const words = process.argv.slice(2);
const json = words.includes('--json');
const say = (text: string): void => {
  if (!json) console.log(text);
};

const megabytes = (value: number | null): string => (value === null ? 'not known' : `${value.toFixed(0)} MB`);

const HUNDRED_K = 100_000;
const MILLION = 1_000_000;

async function bench(): Promise<void> {
  const report: Report = {
    ratios: { mc_100k_1t: null, mc_1m_1t: null, mc_1m_2t: null, cold_100k: null, mathjs_eval: null },
    memory_mb: { ours_1m: coldSimulation(MILLION).memory, numpy_1m: null },
    pipeline_s: {},
  };
  const subject = madeUpSubject();
  const boards = demoBoards();
  const found = findNumpy();
  const differing = found ? await againstNumpy(found, subject, boards.map(boardSubject), report) : [];
  if (!found) console.error(howToGetNumpy());
  againstMathjs(subject, report);
  const { ours_1m, numpy_1m } = report.memory_mb;
  say(`\nMemory for 1 000 000 boards: ours ${megabytes(ours_1m)}, NumPy ${megabytes(numpy_1m)}`);
  pipelines(
    boards.map(({ name, revision }) => `${name}/${revision}`),
    report,
  );
  growth();
  if (json) console.log(JSON.stringify(report, undefined, 2));
  for (const line of differing) console.error(`results differ: ${line}`);
  if (differing.length) process.exitCode = 1;
}

/** Fills in the ratios. @returns where the results differ by more than chance */
async function againstNumpy(
  { python, version }: { python: string; version: string },
  subject: Subject,
  demos: readonly Subject[],
  report: Report,
): Promise<string[]> {
  const numpy = new Numpy(python, subject);
  const one = await contest(subject, numpy, HUNDRED_K, 15);
  const million = await contest(subject, numpy, MILLION, 5);
  const two = await contestOfTwo(subject, numpy, MILLION, 5);
  coldSimulation(HUNDRED_K);
  const cold = Array.from({ length: 7 }, () => ({
    ours: coldSimulation(HUNDRED_K).ms,
    numpy: numpy.cold(HUNDRED_K).ms,
  }));
  report.memory_mb.numpy_1m = numpy.cold(MILLION).memory;
  numpy.close();
  const starts: Contest = {
    ours: median(cold.map((c) => c.ours)),
    numpy: median(cold.map((c) => c.numpy)),
    differences: [],
  };
  const ratio = (c: Contest): number => c.ours / c.numpy;
  Object.assign(report.ratios, {
    mc_100k_1t: ratio(one),
    mc_1m_1t: ratio(million),
    mc_1m_2t: ratio(two),
    cold_100k: ratio(starts),
  });
  say(`Against ${version}; medians of runs that take turns, milliseconds\n`);
  say(
    table([
      ...contestLines(`${subject.name}, 100 000 boards`, one),
      ...contestLines('1 000 000 boards', million),
      ...contestLines('1 000 000 boards, 2 threads against 2 processes', two),
      ...contestLines('100 000 boards, from the start of a process', starts),
    ]),
  );
  const all = [one, million, two];
  for (const demo of demos) {
    const other = new Numpy(python, demo);
    const result = await contest(demo, other, HUNDRED_K, 5);
    other.close();
    all.push(result);
    say(`\n${table(contestLines(`${demo.name}, 100 000 boards`, result))}`);
  }
  return all.flatMap(({ differences }) => differences);
}

function againstMathjs(subject: Subject, report: Report): void {
  const mathjs = mathjsPerBoard(subject, 2000);
  const ours = median(Array.from({ length: 5 }, () => phasesOf(subject, HUNDRED_K).evaluate)) / 100;
  report.ratios.mathjs_eval = ours / mathjs;
  const ratio = (ours / mathjs).toPrecision(2);
  say(`\nEvaluating one board: ratio ${ratio}, ours ${ours.toFixed(3)} µs, mathjs ${mathjs.toFixed(1)} µs`);
}

function pipelines(names: readonly string[], report: Report): void {
  say('\nFrom a spec to its findings, 100 000 boards, in a process of its own');
  for (const name of names) {
    const runs = Array.from({ length: 3 }, () => coldPipeline(name, HUNDRED_K));
    report.pipeline_s[name] = median(runs.map(({ ms }) => ms)) / 1000;
    const most = Math.max(...runs.map(({ memory }) => memory));
    say(`  ${name}: ${report.pipeline_s[name].toFixed(2)} s, ${megabytes(most)}`);
  }
}

function growth(): void {
  if (json) return;
  say('\nGrowth: made-up boards, 100 000 boards each');
  for (const equations of [10, 30, 100, 300, 1000]) {
    const subject = madeUpSubject(equations);
    run(subject, 1000);
    const ms = median(Array.from({ length: 3 }, () => timed(() => run(subject, HUNDRED_K)).ms));
    const each = (ms / equations).toFixed(2);
    say(`  ${String(equations).padStart(4)} equations: ${ms.toFixed(0).padStart(5)} ms, ${each} ms an equation`);
  }
}

const unknown = words.filter((word) => word !== '--json');
if (unknown.length) {
  console.error(`found ${unknown[0]}; expected --json or nothing.`);
  process.exitCode = 2;
} else await bench();
