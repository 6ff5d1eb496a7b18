import { readDesigns } from '../site/designs.ts';
import { loadHandbook } from '../site/handbook-files.ts';
import type { Board } from '../spec/board.ts';
import { readSpec } from '../spec/read-spec.ts';

/** Every demo board that can be read. */
export function demoBoards(): Board[] {
  const book = loadHandbook();
  return readDesigns('designs').flatMap(({ board: id, revision, files }) => {
    const { board } = readSpec(files.get('spec.yaml')!, { file: `${id}/${revision}`, board: id, revision }, book);
    return board ? [board] : [];
  });
}
