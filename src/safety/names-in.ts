import type { Tree } from '../expression/tree.ts';

/** Names that trees mention, each once, in the order of mention. */
export function namesIn(...trees: readonly Tree[]): Set<string> {
  const names = new Set<string>();
  const visit = (tree: Tree): void => {
    if (tree.kind === 'symbol') names.add(tree.name);
    if (tree.kind === 'call') tree.args.forEach(visit);
  };
  trees.forEach(visit);
  return names;
}
