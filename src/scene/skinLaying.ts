import { PARTS, RUN, type SkinMap } from './skinMap.ts';

/** The unrolled skin of a turned part. */
export interface SkinPixels {
  /** Px of four bytes, line after line, all opaque, and one line more than the skin has. */
  readonly px: Uint32Array;
  /** Px of one line. */
  readonly stride: number;
}

/** Two of the four bytes of a px. */
const PAIR = 0x00ff00ff;

/**
 * Lays a skin on a turned part: each px is mixed from the four of the skin round its place.
 * @param down how far down the skin the row lies that is uppermost on the part, px
 * @param out px of the picture, written over where the part is
 */
export function laySkin({ runs, edges }: SkinMap, skin: SkinPixels, down: number, out: Uint32Array): void {
  const shift = Math.max(0, Math.round((down - 0.5) * PARTS));
  for (let at = 0; at < runs.length; at += RUN) {
    const from = runs[at]!;
    const to = runs[at + 1]!;
    const column = runs[at + 2]!;
    const row = runs[at + 3]! + shift;
    const columnStep = runs[at + 4]!;
    const rowStep = runs[at + 5]!;
    if (columnStep === PARTS && rowStep === 0) layEven(skin, out, from, to, column, row);
    else layUneven(skin, out, from, to, column, row, columnStep, rowStep);
  }
  for (let at = 0; at < edges.length; at += 2) {
    const px = edges[at]!;
    out[px] = (out[px]! & 0xffffff) | (edges[at + 1]! << 24);
  }
}

/** A run that shows px of the skin side by side: what is mixed for one px serves the next. */
function layEven(
  { px, stride }: SkinPixels,
  out: Uint32Array,
  from: number,
  to: number,
  column: number,
  row: number,
): void {
  let at = Math.imul(row >> 16, stride) + (column >> 16);
  const low = (row >> 8) & 255;
  const right = (column >> 8) & 255;
  let even = mixed(px[at]!, px[at + stride]!, low);
  let odd = mixed(px[at]! >>> 8, px[at + stride]! >>> 8, low);
  for (let i = from; i < to; i++) {
    at += 1;
    const above = px[at]!;
    const below = px[at + stride]!;
    const nextEven = mixed(above, below, low);
    const nextOdd = mixed(above >>> 8, below >>> 8, low);
    out[i] = mixed(even, nextEven, right) | (mixed(odd, nextOdd, right) << 8);
    even = nextEven;
    odd = nextOdd;
  }
}

function layUneven(
  { px, stride }: SkinPixels,
  out: Uint32Array,
  from: number,
  to: number,
  firstColumn: number,
  firstRow: number,
  columnStep: number,
  rowStep: number,
): void {
  let column = firstColumn;
  let row = firstRow;
  for (let i = from; i < to; i++) {
    const at = Math.imul(row >> 16, stride) + (column >> 16);
    const low = (row >> 8) & 255;
    const right = (column >> 8) & 255;
    const a = px[at]!;
    const b = px[at + 1]!;
    const c = px[at + stride]!;
    const d = px[at + stride + 1]!;
    const even = mixed(mixed(a, c, low), mixed(b, d, low), right);
    const odd = mixed(mixed(a >>> 8, c >>> 8, low), mixed(b >>> 8, d >>> 8, low), right);
    out[i] = even | (odd << 8);
    column += columnStep;
    row += rowStep;
  }
}

/** Two bytes of each at once. @param share of the second, parts of 256 */
function mixed(a: number, b: number, share: number): number {
  const from = a & PAIR;
  return ((Math.imul((b & PAIR) - from, share) >>> 8) + from) & PAIR;
}
