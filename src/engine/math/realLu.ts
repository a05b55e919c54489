/** LU factors of a small dense matrix, row major, with partial pivoting. */
export interface RealLu {
  readonly n: number;
  readonly a: Float64Array;
  readonly pivot: Int32Array;
}

/**
 * Factors `a` (n×n, row major) in place.
 * @throws Error when the matrix is singular to working precision
 */
export function factorLu(a: Float64Array, n: number): RealLu {
  const pivot = new Int32Array(n);
  for (let k = 0; k < n; k++) {
    let p = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i * n + k]!) > Math.abs(a[p * n + k]!)) p = i;
    pivot[k] = p;
    if (p !== k) swapRows(a, n, k, p);
    const head = a[k * n + k]!;
    if (!(Math.abs(head) > 0)) throw new Error(`matrix is singular at column ${k}`);
    for (let i = k + 1; i < n; i++) {
      const factor = a[i * n + k]! / head;
      a[i * n + k] = factor;
      for (let j = k + 1; j < n; j++) a[i * n + j] = a[i * n + j]! - factor * a[k * n + j]!;
    }
  }
  return { n, a, pivot };
}

/** Solves for one right-hand side in place. */
export function solveLu({ n, a, pivot }: RealLu, x: Float64Array): void {
  for (let k = 0; k < n; k++) {
    const p = pivot[k]!;
    [x[k], x[p]] = [x[p]!, x[k]!];
  }
  for (let i = 0; i < n; i++) for (let k = 0; k < i; k++) x[i] = x[i]! - a[i * n + k]! * x[k]!;
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = x[i]! - a[i * n + k]! * x[k]!;
    x[i] = x[i]! / a[i * n + i]!;
  }
}

function swapRows(a: Float64Array, n: number, i: number, j: number): void {
  for (let c = 0; c < n; c++) {
    const held = a[i * n + c]!;
    a[i * n + c] = a[j * n + c]!;
    a[j * n + c] = held;
  }
}
