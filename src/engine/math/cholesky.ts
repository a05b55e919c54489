/**
 * Cholesky factor of a symmetric positive definite matrix, in place: the lower triangle of `a` becomes L, A = L·Lᵀ.
 * @param a n×n, row major; the upper triangle is not read
 * @throws Error when a pivot is not positive: the matrix is not positive definite
 */
export function factorCholesky(a: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    const ri = i * n;
    for (let j = 0; j <= i; j++) {
      const rj = j * n;
      let sum = a[ri + j]!;
      for (let k = 0; k < j; k++) sum -= a[ri + k]! * a[rj + k]!;
      if (i !== j) a[ri + j] = sum / a[rj + j]!;
      else if (sum > 0) a[ri + i] = Math.sqrt(sum);
      else throw new Error(`matrix is not positive definite at row ${i}`);
    }
  }
}

/** Solves L·Lᵀ x = b in place for `columns` right-hand sides; `b` is n×columns, row major. */
export function solveCholesky(l: Float64Array, n: number, b: Float64Array, columns: number): void {
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) subtractRow(b, columns, i, k, l[i * n + k]!);
    scaleRow(b, columns, i, 1 / l[i * n + i]!);
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) subtractRow(b, columns, i, k, l[k * n + i]!);
    scaleRow(b, columns, i, 1 / l[i * n + i]!);
  }
}

function subtractRow(b: Float64Array, columns: number, to: number, from: number, factor: number): void {
  if (factor === 0) return;
  const t = to * columns;
  const f = from * columns;
  for (let c = 0; c < columns; c++) b[t + c] = b[t + c]! - factor * b[f + c]!;
}

function scaleRow(b: Float64Array, columns: number, row: number, factor: number): void {
  const r = row * columns;
  for (let c = 0; c < columns; c++) b[r + c] = b[r + c]! * factor;
}
