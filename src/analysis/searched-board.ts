import { evaluate } from '../expression/readings/value.ts';
import type { Board } from '../spec/board.ts';
import { type JudgedCheck, judge } from './check-finding.ts';
import { drawnVariables } from './correlation.ts';
import type { Model } from './model.ts';
import { referencePoint, type SearchedResult, searchResult } from './result-finding.ts';
import { atCorners, type PartsTape, type Target } from './simulate/at-corners.ts';
import { modelFor } from './values-at.ts';
import type { Variable } from './variable.ts';
import { type Box, boxesOf } from './worst-case/box.ts';

/** A board with the worst case of every check and result sought. SI base units. */
export interface SearchedBoard {
  readonly model: Model;
  readonly boxes: readonly Box[];
  readonly typical: Float64Array;
  readonly nominal: Float64Array;
  readonly judged: readonly JudgedCheck[];
  readonly searched: readonly SearchedResult[];
}

export function searchBoard(board: Board): SearchedBoard {
  const model = modelFor(board);
  const boxes = boxesOf(board, model.variables);
  const typical = Float64Array.from(model.variables, ({ typ }) => typ);
  const nominal = evaluate(model.tape, typical);
  const judged = model.checks.map((check) => judge(model, check, boxes, typical, nominal));
  const searched = model.results.map((result) => searchResult(model, result, boxes, typical, nominal));
  return { model, boxes, typical, nominal, judged, searched };
}

/**
 * What is simulated: every check at the corner of the conditions that is worst for it, then every result at the corner of its
 * thinnest check, all on the same boards.
 */
export function simulatedParts({ model, judged, searched }: SearchedBoard): {
  parts: PartsTape;
  variables: readonly Variable[];
} {
  const targets: Target[] = [
    ...judged.map(({ from, least }) => ({ slot: from.simulated, at: least.at })),
    ...searched.map((one) => ({ slot: model.simulated.get(one.result.id)!, at: referencePoint(one, judged) })),
  ];
  return {
    parts: atCorners(model.tape, model.variables, targets, model.correlated),
    variables: drawnVariables(model.variables, model.correlated),
  };
}
