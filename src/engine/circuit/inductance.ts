import { MU0 } from '../math/constants.ts';
import type { ArmatureDesign } from '../parts/armature.ts';
import type { Topology } from './topology.ts';

/**
 * Leakage across a slot of two layers, each conductor as wide as the slot, per metre of stack and turn squared.
 * top-top μ0·hl/(3bs), bottom-bottom 4·μ0·hl/(3bs), top-bottom μ0·hl/(2bs)
 * @source integration of a linear magnetomotive force (standard machine-design theory)
 */
export function slotLeakage(a: ArmatureDesign): { top: number; bottom: number; mutual: number } {
  const unit = (MU0 * a.layerHeight) / a.slotWidth;
  return { top: unit / 3, bottom: (4 * unit) / 3, mutual: unit / 2 };
}

/** Share of its own slot leakage a piece of a divided coil does not share with the rest of that coil. */
const PIECE_LEAKAGE = 0.02;

/** Inductances of all winding segments and their coupling to one turn of the growler winding. */
export interface Inductances {
  /** n², H */
  readonly mutual: Float64Array;
  /** n, H per growler turn */
  readonly growler: Float64Array;
}

export function newInductances(segments: number): Inductances {
  return { mutual: new Float64Array(segments * segments), growler: new Float64Array(segments) };
}

/**
 * L_ij = depth·Σ w_i·w_j·M[s_i][s_j] + stack·Σ(same slot) w_i·w_j·λ_layers, plus the coil ends on the diagonal.
 * @param m      slot potential matrix, (S+1)²
 * @param shift  slots by which the armature stands further round than `m` was taken at
 */
export function segmentInductances(
  a: ArmatureDesign,
  depth: number,
  topology: Topology,
  m: Float64Array,
  shift: number,
  into: Inductances,
): void {
  const n = topology.windingSegments;
  const w = a.slots + 1;
  const leak = slotLeakage(a);
  const lt = leak.top * a.stackLength;
  const lb = leak.bottom * a.stackLength;
  const lm = leak.mutual * a.stackLength;
  const place = (slot: number): number => 1 + ((slot + shift) % a.slots);
  for (let i = 0; i < n; i++) {
    const p = topology.segments[i]!;
    const pt = p.top * depth;
    const pb = p.bottom * depth;
    const rowT = place(p.topSlot) * w;
    const rowB = place(p.bottomSlot) * w;
    into.growler[i] = pt * m[rowT]! + pb * m[rowB]!;
    for (let j = 0; j <= i; j++) {
      const q = topology.segments[j]!;
      const t = place(q.topSlot);
      const b = place(q.bottomSlot);
      let l =
        (pt * m[rowT + t]! + pb * m[rowB + t]!) * q.top + (pt * m[rowT + b]! + pb * m[rowB + b]!) * q.bottom;
      if (p.topSlot === q.topSlot) l += p.top * q.top * lt;
      if (p.bottomSlot === q.bottomSlot) l += p.bottom * q.bottom * lb;
      if (p.topSlot === q.bottomSlot) l += p.top * q.bottom * lm;
      if (p.bottomSlot === q.topSlot) l += p.bottom * q.top * lm;
      into.mutual[i * n + j] = l;
      into.mutual[j * n + i] = l;
    }
    const apart = p.piece ? PIECE_LEAKAGE * (p.top * p.top * lt + p.bottom * p.bottom * lb) : 0;
    into.mutual[i * n + i]! += p.endLeak + apart;
  }
}
