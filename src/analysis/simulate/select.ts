/** The value of a rank, counted from 0, among the first `n` values, by quickselect (C. A. R. Hoare). Reorders them. */
export function selected(values: Float64Array, n: number, rank: number): number {
  let [low, high] = [0, n - 1];
  while (low < high) {
    const pivot = median(values[low]!, values[(low + high) >> 1]!, values[high]!);
    let [i, j] = [low, high];
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i > j) break;
      const held = values[i]!;
      values[i++] = values[j]!;
      values[j--] = held;
    }
    if (rank <= j) high = j;
    else if (rank >= i) low = i;
    else return pivot;
  }
  return values[rank]!;
}

const median = (a: number, b: number, c: number): number => Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
