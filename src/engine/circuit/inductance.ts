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
  planOf(a, depth, topology).fill(m, shift, into);
}

/** The last plan made for each list of segments. */
const plans = new WeakMap<Topology, InductancePlan>();

function planOf(a: ArmatureDesign, depth: number, topology: Topology): InductancePlan {
  const known = plans.get(topology);
  if (known?.fits(a, depth)) return known;
  const fresh = new InductancePlan(a, depth, topology);
  plans.set(topology, fresh);
  return fresh;
}

/** Everything about the inductances of a winding that stays the same when the armature is turned. */
class InductancePlan {
  private readonly a: ArmatureDesign;
  private readonly depth: number;
  private readonly segments: number;
  /** Slot and turns of each segment, top and bottom layer. */
  private readonly topSlot: Int32Array;
  private readonly bottomSlot: Int32Array;
  private readonly top: Float64Array;
  private readonly bottom: Float64Array;
  /** Leakage across slots and round the coil ends, lower triangle, n², H. */
  private readonly leakage: Float64Array;
  /** Scratch: columns of M of each segment as the armature stands, and one segment's linkage with every column. */
  private readonly topAt: Int32Array;
  private readonly bottomAt: Int32Array;
  private readonly linkage: Float64Array;

  constructor(a: ArmatureDesign, depth: number, topology: Topology) {
    const n = topology.windingSegments;
    const winding = topology.segments.slice(0, n);
    this.a = a;
    this.depth = depth;
    this.segments = n;
    this.topSlot = Int32Array.from(winding, (s) => s.topSlot);
    this.bottomSlot = Int32Array.from(winding, (s) => s.bottomSlot);
    this.top = Float64Array.from(winding, (s) => s.top);
    this.bottom = Float64Array.from(winding, (s) => s.bottom);
    this.leakage = leakages(a, topology);
    this.topAt = new Int32Array(n);
    this.bottomAt = new Int32Array(n);
    this.linkage = new Float64Array(a.slots + 1);
  }

  fits(a: ArmatureDesign, depth: number): boolean {
    return this.a === a && this.depth === depth;
  }

  fill(m: Float64Array, shift: number, { mutual, growler }: Inductances): void {
    const { segments: n, topAt, bottomAt, top, bottom, linkage, leakage } = this;
    this.place(shift);
    for (let i = 0; i < n; i++) {
      this.link(m, i);
      growler[i] = linkage[0]!;
      const row = i * n;
      for (let j = 0; j <= i; j++) {
        const l = leakage[row + j]! + top[j]! * linkage[topAt[j]!]! + bottom[j]! * linkage[bottomAt[j]!]!;
        mutual[row + j] = l;
        mutual[j * n + i] = l;
      }
    }
  }

  private place(shift: number): void {
    const { slots } = this.a;
    const turned = ((shift % slots) + slots) % slots;
    for (let i = 0; i < this.segments; i++) {
      this.topAt[i] = 1 + ((this.topSlot[i]! + turned) % slots);
      this.bottomAt[i] = 1 + ((this.bottomSlot[i]! + turned) % slots);
    }
  }

  /** Linkage of segment i with one ampere in the growler's turn and in every slot, H. */
  private link(m: Float64Array, i: number): void {
    const { linkage } = this;
    const w = linkage.length;
    const t = this.topAt[i]! * w;
    const b = this.bottomAt[i]! * w;
    const pt = this.top[i]! * this.depth;
    const pb = this.bottom[i]! * this.depth;
    for (let c = 0; c < w; c++) linkage[c] = pt * m[t + c]! + pb * m[b + c]!;
  }
}

/** Leakage across slots and round the coil ends between winding segments, lower triangle, n², H. */
export function leakages(a: ArmatureDesign, topology: Topology): Float64Array {
  const n = topology.windingSegments;
  const leak = slotLeakage(a);
  const lt = leak.top * a.stackLength;
  const lb = leak.bottom * a.stackLength;
  const lm = leak.mutual * a.stackLength;
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    const p = topology.segments[i]!;
    for (let j = 0; j <= i; j++) {
      const q = topology.segments[j]!;
      let l = 0;
      if (p.topSlot === q.topSlot) l += p.top * q.top * lt;
      if (p.bottomSlot === q.bottomSlot) l += p.bottom * q.bottom * lb;
      if (p.topSlot === q.bottomSlot) l += p.top * q.bottom * lm;
      if (p.bottomSlot === q.topSlot) l += p.bottom * q.top * lm;
      out[i * n + j] = l;
    }
    const apart = p.piece ? PIECE_LEAKAGE * (p.top * p.top * lt + p.bottom * p.bottom * lb) : 0;
    out[i * n + i]! += p.endLeak + apart;
  }
  return out;
}
