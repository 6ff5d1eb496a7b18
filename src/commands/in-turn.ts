/** Works on items in their order, `width` of them at a time; the first failure ends it when what is under way is done. */
export async function inTurn<T>(items: readonly T[], width: number, work: (item: T) => Promise<void>): Promise<void> {
  const left = [...items];
  const hand = async (): Promise<void> => {
    for (let item = left.shift(); item !== undefined; item = left.shift()) {
      try {
        await work(item);
      } catch (error) {
        left.length = 0;
        throw error;
      }
    }
  };
  const results = await Promise.allSettled(Array.from({ length: Math.min(width, items.length) }, hand));
  for (const result of results) if (result.status === 'rejected') throw result.reason;
}
