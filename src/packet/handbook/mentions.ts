import type { Circuit } from '../../spec/board.ts';
import { mentioned } from '../../spec/names.ts';

/** Whether a circuit asks the derating policy for anything. */
export function mentionsDerating({ inputs, results, checks, validity }: Circuit): boolean {
  const trees = [
    ...inputs.flatMap(({ value }) => (value.kind === 'expression' ? [value.tree] : [])),
    ...results.map(({ tree }) => tree),
    ...[...checks, ...validity].flatMap(({ left, right }) => [left, right]),
  ];
  return trees.some((tree) => [...mentioned(tree)].some((id) => id.startsWith('derating.')));
}
