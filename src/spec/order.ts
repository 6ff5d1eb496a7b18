/**
 * Ids in an order in which each comes after all it depends on, and the loops that make such an order impossible.
 * Each loop is named round: `[a, b, c]` means a needs b, b needs c, c needs a.
 */
export function ordered(
  ids: Iterable<string>,
  needs: (id: string) => Iterable<string>,
): { order: string[]; loops: string[][] } {
  const state = new Map<string, 'open' | 'done'>();
  const order: string[] = [];
  const loops: string[][] = [];
  // A stack of our own: a chain of ten thousand circuits must not overflow the call stack.
  for (const start of ids) {
    if (state.has(start)) continue;
    const path: { id: string; rest: Iterator<string> }[] = [];
    const enter = (id: string) => {
      state.set(id, 'open');
      path.push({ id, rest: needs(id)[Symbol.iterator]() });
    };
    enter(start);
    while (path.length) {
      const top = path.at(-1)!;
      const next = top.rest.next();
      if (next.done) {
        state.set(top.id, 'done');
        order.push(top.id);
        path.pop();
      } else if (state.get(next.value) === 'open') {
        loops.push(path.slice(path.findIndex(({ id }) => id === next.value)).map(({ id }) => id));
      } else if (!state.has(next.value)) enter(next.value);
    }
  }
  return { order, loops };
}
