import type { Column } from '../block.ts';

/** Columns of tables by what stands in them. */

const of = (head: string, align: Column['align'], more: Partial<Column> = {}): Column => ({
  head: head ? [head] : [],
  align,
  ...more,
});

/** Words of the content. */
export const serif = (head: string): Column => of(head, 'left');
/** Names, origins, verdicts: the apparatus. */
export const sans = (head: string): Column => of(head, 'left', { face: 'sans' });
/** Numbers, flush on the decimal point. */
export const decimal = (head: string): Column => of(head, 'decimal');
/** Units behind a column of numbers. */
export const unit = (head = ''): Column => of(head, 'unit');
export const right = (head: string): Column => of(head, 'right');
/** Running numbers and page numbers. */
export const folio = (head = ''): Column => of(head, 'right', { face: 'sans' });
export const strip = (width: number): Column => of('', 'strip', { width });
/** Room to write in. */
export const blank = (head: string, width: number): Column => of(head, 'blank', { width });
/** A column that takes a share of the table's width, whatever its neighbours hold. */
export const wide = (column: Column, width: number): Column => ({ ...column, width });
