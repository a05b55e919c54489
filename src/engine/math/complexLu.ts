/**
 * Dense complex matrix kept as two real arrays, row major, and its LU factors with partial pivoting in place.
 * Small systems only: the loops of a winding number one to a dozen.
 */
export interface ComplexLu {
  readonly n: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly pivot: Int32Array;
}

export function newComplexLu(n: number): ComplexLu {
  return { n, re: new Float64Array(n * n), im: new Float64Array(n * n), pivot: new Int32Array(n) };
}

/**
 * Factors the matrix in place.
 * @throws Error when the matrix is singular to working precision
 */
export function factorComplex(lu: ComplexLu): void {
  const { n, re, im, pivot } = lu;
  for (let k = 0; k < n; k++) {
    const p = largestInColumn(lu, k);
    pivot[k] = p;
    if (p !== k) swapRows(re, im, n, k, p);
    const pr = re[k * n + k]!;
    const pi = im[k * n + k]!;
    const size = pr * pr + pi * pi;
    if (!(size > 0)) throw new Error(`complex matrix is singular at column ${k}`);
    for (let i = k + 1; i < n; i++) {
      const ik = i * n + k;
      const fr = (re[ik]! * pr + im[ik]! * pi) / size;
      const fi = (im[ik]! * pr - re[ik]! * pi) / size;
      re[ik] = fr;
      im[ik] = fi;
      for (let j = k + 1; j < n; j++) {
        const kj = k * n + j;
        const ij = i * n + j;
        re[ij] = re[ij]! - (fr * re[kj]! - fi * im[kj]!);
        im[ij] = im[ij]! - (fr * im[kj]! + fi * re[kj]!);
      }
    }
  }
}

/** Solves for `columns` right-hand sides in place; xr and xi are n×columns, row major. */
export function solveComplex(lu: ComplexLu, xr: Float64Array, xi: Float64Array, columns: number): void {
  const { n, re, im, pivot } = lu;
  for (let k = 0; k < n; k++) if (pivot[k] !== k) swapRows(xr, xi, columns, k, pivot[k]!);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) eliminate(xr, xi, columns, i, k, re[i * n + k]!, im[i * n + k]!);
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) eliminate(xr, xi, columns, i, k, re[i * n + k]!, im[i * n + k]!);
    divide(xr, xi, columns, i, re[i * n + i]!, im[i * n + i]!);
  }
}

function largestInColumn({ n, re, im }: ComplexLu, k: number): number {
  let best = k;
  let size = -1;
  for (let i = k; i < n; i++) {
    const s = re[i * n + k]! ** 2 + im[i * n + k]! ** 2;
    if (s > size) {
      size = s;
      best = i;
    }
  }
  return best;
}

function swapRows(re: Float64Array, im: Float64Array, columns: number, a: number, b: number): void {
  for (let c = 0; c < columns; c++) {
    const i = a * columns + c;
    const j = b * columns + c;
    const r = re[i]!;
    const m = im[i]!;
    re[i] = re[j]!;
    im[i] = im[j]!;
    re[j] = r;
    im[j] = m;
  }
}

function eliminate(
  xr: Float64Array,
  xi: Float64Array,
  columns: number,
  to: number,
  from: number,
  fr: number,
  fi: number,
): void {
  for (let c = 0; c < columns; c++) {
    const f = from * columns + c;
    const t = to * columns + c;
    xr[t] = xr[t]! - (fr * xr[f]! - fi * xi[f]!);
    xi[t] = xi[t]! - (fr * xi[f]! + fi * xr[f]!);
  }
}

function divide(
  xr: Float64Array,
  xi: Float64Array,
  columns: number,
  row: number,
  dr: number,
  di: number,
): void {
  const size = dr * dr + di * di;
  for (let c = 0; c < columns; c++) {
    const i = row * columns + c;
    const r = xr[i]!;
    xr[i] = (r * dr + xi[i]! * di) / size;
    xi[i] = (xi[i]! * dr - r * di) / size;
  }
}
