/** What rounding may make of a pivot that is zero. */
const blur = 1e-9;

/**
 * The lower triangle L with L·Lᵀ = matrix (Cholesky); undefined where the matrix is not positive semidefinite.
 * @param matrix  symmetric, with ones on its diagonal
 * @example factored([[1, 0.6], [0.6, 1]]) // [[1, 0], [0.6, 0.8]]
 */
export function factored(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const lower = matrix.map((row) => row.map(() => 0));
  for (let j = 0; j < matrix.length; j++) {
    const rest = (i: number): number => {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k++) sum -= lower[i]![k]! * lower[j]![k]!;
      return sum;
    };
    const square = rest(j);
    if (square < -blur) return undefined;
    const pivot = square > blur ? Math.sqrt(square) : 0;
    lower[j]![j] = pivot;
    for (let i = j + 1; i < matrix.length; i++) {
      if (pivot > 0) lower[i]![j] = rest(i) / pivot;
      else if (Math.abs(rest(i)) > Math.sqrt(blur)) return undefined;
    }
  }
  return lower;
}
