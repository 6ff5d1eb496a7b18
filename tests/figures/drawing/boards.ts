import { fileURLToPath } from 'node:url';
import { find } from '../../../src/analysis/find.ts';
import { circuitDrawing } from '../../../src/packet/chapters/circuit-drawing.ts';
import type { Drawing } from '../../../src/packet/drawing.ts';
import { numbering } from '../../../src/packet/numbering.ts';
import { reviewOf } from '../../../src/packet/review.ts';
import { readDesigns } from '../../../src/site/designs.ts';
import { readSpec } from '../../../src/spec/read-spec.ts';
import { handbook } from '../../handbook.ts';

/** Drawings of every circuit of every demo board, by `board/revision circuit`. */
export function boardDrawings(): [name: string, drawing: Drawing][] {
  const designs = readDesigns(fileURLToPath(new URL('../../../designs', import.meta.url)));
  return designs.flatMap(({ board: name, revision, files }): [string, Drawing][] => {
    const read = readSpec(files.get('spec.yaml')!, { file: name, board: name, revision }, handbook);
    // Whether every board can be read is asked elsewhere.
    if (!read.board) return [];
    const { board } = read;
    const findings = find(board, { seed: 1, trials: 1, digest: 'f'.repeat(64), tool: '1.0.0' });
    const review = reviewOf({ board, findings }, {});
    const numbers = numbering(7);
    return board.circuits.flatMap((circuit): [string, Drawing][] => {
      const drawing = circuitDrawing(review, circuit, numbers);
      return drawing ? [[`${name}/${revision} ${circuit.id}`, drawing]] : [];
    });
  });
}
