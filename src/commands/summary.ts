import { join, relative } from 'node:path';
import type { Options } from '../site/options.ts';
import { pdfName } from '../site/pdf-name.ts';
import type { Finished } from './finished.ts';
import { textTable } from './text-table.ts';

/** The table at the end of a run: each revision, its verdict, and where its PDF lies. */
export function summary(finished: readonly Finished[], options: Options): string {
  const out = relative(process.cwd(), options.out) || '.';
  const rows = finished.map(({ board, revision, head, pages }) => [
    board,
    revision,
    head.verdict === 'fail' ? 'FAIL' : head.verdict,
    head.thinnest?.margin ?? '–',
    head.yield ?? '–',
    pages === undefined ? 'not printed' : `${join(out, board, revision, pdfName(head))} (${pages} pages)`,
  ]);
  return textTable(['board', 'revision', 'verdict', 'thinnest', 'yield', 'packet'], rows);
}
