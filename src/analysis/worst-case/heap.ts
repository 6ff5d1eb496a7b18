/** A binary heap: `pop` gives the item that stands first by `order`. */
export class Heap<T> {
  readonly #items: T[] = [];
  readonly #order: (a: T, b: T) => number;

  constructor(order: (a: T, b: T) => number) {
    this.#order = order;
  }

  get size(): number {
    return this.#items.length;
  }

  peek(): T | undefined {
    return this.#items[0];
  }

  push(item: T): void {
    const items = this.#items;
    let at = items.push(item) - 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (this.#order(items[parent]!, items[at]!) <= 0) break;
      [items[parent], items[at]] = [items[at]!, items[parent]!];
      at = parent;
    }
  }

  pop(): T | undefined {
    const items = this.#items;
    const first = items[0];
    const last = items.pop();
    if (items.length && last !== undefined) {
      items[0] = last;
      this.#sink(0);
    }
    return first;
  }

  #sink(from: number): void {
    const items = this.#items;
    for (let at = from; ; ) {
      let least = at;
      for (const child of [2 * at + 1, 2 * at + 2]) {
        if (child < items.length && this.#order(items[child]!, items[least]!) < 0) least = child;
      }
      if (least === at) return;
      [items[least], items[at]] = [items[at]!, items[least]!];
      at = least;
    }
  }
}
