import type { Board } from '../spec/board.ts';
import { assumptionsOf } from './assumptions.ts';
import { benchFindings } from './bench.ts';
import { checkFinding, deviationFor, type JudgedCheck } from './check-finding.ts';
import { cornerGridOf } from './corner-grid/corner-grid.ts';
import type { CheckFinding, Findings, InputFinding, ResultFinding } from './findings.ts';
import type { Model } from './model.ts';
import { preferredFindings } from './preferred.ts';
import { proposalsOf } from './propose.ts';
import { requirementFindings } from './requirements.ts';
import { resultFinding, type SearchedResult } from './result-finding.ts';
import { roomsOf } from './room/room.ts';
import { type SearchedBoard, searchBoard, simulatedParts } from './searched-board.ts';
import { boardsForDigits, pilot } from './simulate/digits.ts';
import { type Counting, simulate } from './simulate/simulate.ts';
import { clopperPearson } from './statistics.ts';
import { stimulusFindings } from './stimulus.ts';
import { sweepsOf } from './sweep/sweep.ts';
import { inUnit, printedUnit } from './units.ts';
import { boardVerdict } from './verdict.ts';
import type { Box } from './worst-case/box.ts';

export interface FindOptions {
  readonly seed: number;
  /** Simulated boards; left out, as many as the digits printed need. */
  readonly trials?: number | undefined;
  readonly digest: string;
  /** How boards are shared out among threads; the numbers do not depend on it. */
  readonly counting?: Counting;
  /** Version of this tool. */
  readonly tool: string;
}

/** Everything about one board: worst cases, simulated boards, margins, verdicts. Pure; the same inputs give the same findings. */
export function find(board: Board, options: FindOptions): Findings {
  const found = searchBoard(board);
  const { model, boxes, typical, nominal, judged, searched } = found;
  const simulated = simulateAll(board, found, options);
  const { trials } = simulated;
  const checks = judged.map((one, i) =>
    checkFinding(board, model, one, simulated.spreads[i]!, simulated.failures[i]!, trials),
  );
  const results = searched.map(
    (one, i) => [one.result.id, resultFinding(model, one, simulated.spreads[judged.length + i]!)] as const,
  );
  const sweeps = sweepsOf({ board, model, boxes, typical, nominal }, cornersOf(searched, judged));
  const points = stimulusFindings(board, { ...options, trials });
  const deciding = checks.filter((_, i) => !judged[i]!.from.validity);
  const ranking = ranked(deciding).map(({ id }) => id);
  const bench = benchFindings(board, points, { ...options, trials });
  return {
    format: 'copperplate-results/1',
    board: board.name,
    revision: board.revision,
    document: board.identity.document,
    title: board.identity.title,
    revision_mark: board.identity.mark,
    status: board.identity.status,
    issued: board.identity.issued,
    inputs_sha256: options.digest,
    tool: options.tool,
    seed: options.seed,
    trials,
    trials_chosen: options.trials === undefined ? 'for digits' : 'by hand',
    inputs: inputFindings(board, model, boxes, nominal),
    results: Object.fromEntries(results) as Record<string, ResultFinding>,
    checks: deciding,
    validity: checks.filter((_, i) => judged[i]!.from.validity),
    ranking,
    verdict: boardVerdict(deciding.map(({ verdict }) => verdict)),
    yield: deciding.some(({ verdict }) => verdict === 'not assessed')
      ? null
      : clopperPearson(trials - simulated.failed, trials),
    corners: cornerGridOf({ model, boxes, typical, target: board.target }, uncarried(board, judged)),
    sweeps: sweeps.drawn,
    sweeps_left_out: sweeps.leftOut,
    room: roomsOf(model, judged, boxes),
    preferred: preferredFindings(board),
    proposals: proposalsOf(board),
    test_points: points,
    requirements: requirementFindings(board, deciding, ranking, bench),
    bench,
    cautions: [],
    assumptions: assumptionsOf(board, model, judged),
  };
}

/** Checks that a deviation carries do not decide on the yield. */
function simulateAll(board: Board, found: SearchedBoard, options: FindOptions) {
  const { judged } = found;
  const { parts, variables } = simulatedParts(found);
  const decides = parts.outputs.map((_, i) => {
    const check = judged[i];
    return check !== undefined && !check.from.validity && check.reason === undefined && !deviationFor(board, check);
  });
  const slacks = { counted: parts.outputs.map((_, i) => i < judged.length), decides };
  const run = (trials: number) => ({
    trials,
    ...simulate(parts, variables, slacks, { seed: options.seed, trials }, options.counting),
  });
  if (options.trials !== undefined) return run(options.trials);
  const foreseen = run(boardsForDigits(run(pilot).spreads, pilot));
  const needed = boardsForDigits(foreseen.spreads, foreseen.trials);
  return needed === foreseen.trials ? foreseen : run(needed);
}

/** A check that fails and is carried by a deviation is not what a reader of the others looks for. */
const uncarried = (board: Board, judged: readonly JudgedCheck[]): JudgedCheck[] =>
  judged.filter((one) => !(one.least.value < 0 && deviationFor(board, one)));

/** Where the worst cases of a result and of a check lie, all variables of the board. */
const cornersOf =
  (searched: readonly SearchedResult[], judged: readonly JudgedCheck[]) =>
  (result: string, check: string | undefined): Float64Array[] => [
    ...searched.filter((one) => one.result.id === result).flatMap(({ min, max }) => [min.at, max.at]),
    ...judged.filter(({ from }) => from.check.id === check).map(({ least }) => least.at),
  ];

/** Thinnest margin first; what could not be assessed before all, then by slack where the limit is zero. */
function ranked(checks: readonly CheckFinding[]): CheckFinding[] {
  const rank = ({ margin, worst_slack: slack }: CheckFinding): number =>
    slack === null ? Number.NEGATIVE_INFINITY : (margin ?? (slack < 0 ? -1 : slack > 0 ? 1 : 0));
  return checks.toSorted((a, b) => rank(a) - rank(b) || (a.id < b.id ? -1 : 1));
}

function inputFindings(
  board: Board,
  model: Model,
  boxes: readonly Box[],
  nominal: Float64Array,
): Record<string, InputFinding> {
  const inputs = [...board.conditions, ...board.circuits.flatMap((circuit) => circuit.inputs)];
  return Object.fromEntries(
    inputs.map((input) => {
      const unit = printedUnit(input.unit);
      const { value } = input;
      if (value.kind === 'expression') {
        const typ = inUnit(nominal[model.slots.get(input.id)!]!, input.unit);
        return [input.id, { unit, kind: value.kind, min: typ, typ, max: typ }];
      }
      const variable = model.variables.findIndex(({ id }) => id === input.id);
      const lo =
        value.kind === 'condition' && variable >= 0
          ? Math.min(...boxes.map((box) => box.lo[variable]!))
          : value.quantity.min;
      const hi =
        value.kind === 'condition' && variable >= 0
          ? Math.max(...boxes.map((box) => box.hi[variable]!))
          : value.quantity.max;
      const [min, typ, max] = [lo, value.quantity.typ, hi].map((x) => inUnit(x, input.unit));
      return [input.id, { unit, kind: value.kind, min: min!, typ: typ!, max: max! }];
    }),
  );
}
