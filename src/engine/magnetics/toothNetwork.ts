import type { GrowlerDesign } from '../growler.ts';
import { factorCholesky, solveCholesky } from '../math/cholesky.ts';
import { MU0 } from '../math/constants.ts';
import type { ArmatureDesign } from '../parts/armature.ts';
import { carterFraction, mouthPermeance, newJawView, toJaw } from './gap.ts';

/** Points on each tooth at which the gap to the jaws is taken. */
const POINTS = 16;
/** Gap permeance beyond the ends of a jaw face, over the formula's. Fitted to FEM (physics of the bench, section 2). */
const BEYOND_FACE = 1.065;
/** Leakage through the air between teeth further apart, and reluctance of a tooth body over the plain one: fitted to FEM. */
const FAR_TEETH = 0.315;
export const TOOTH_BODY = 1.4;

/**
 * Reluctance network of armature and growler at one rotation, per metre of depth. Nodes: tooth tips 0..S-1, tooth
 * roots S..2S-1, near jaw 2S, far jaw 2S+1. Tooth t lies between slots t and t+1.
 */
export interface ToothNetwork {
  readonly slots: number;
  /** Node matrix before any source is applied, (2S+2)², H/m. */
  readonly nodes: Float64Array;
  /** Permeance of each tooth body and of the growler core, H/m. */
  readonly tooth: number;
  readonly core: number;
}

/** Permeances of teeth, slot mouths, air, yoke and growler at a rotation (rad). */
export function toothNetwork(a: ArmatureDesign, g: GrowlerDesign, rotation: number): ToothNetwork {
  const s = a.slots;
  const n = 2 * s + 2;
  const nodes = new Float64Array(n * n);
  const link = (i: number, j: number, p: number): void => {
    nodes[i * n + i]! += p;
    nodes[j * n + j]! += p;
    nodes[i * n + j]! -= p;
    nodes[j * n + i]! -= p;
  };
  linkTeethToJaws(a, g, rotation, link);
  linkMouths(a, g, rotation, link);
  linkFarTeeth(a, g, rotation, link);
  const tooth = toothBody(a);
  const yoke = yokeSegment(a);
  for (let t = 0; t < s; t++) {
    link(t, s + t, tooth);
    link(s + t, s + ((t + 1) % s), yoke);
  }
  const core = (MU0 * g.relativePermeability) / g.pathLengthOverWidth;
  link(2 * s, 2 * s + 1, core + MU0 * g.jawLeakage);
  nodes[s * n + s]! += tooth;
  return { slots: s, nodes, tooth, core };
}

type Link = (i: number, j: number, permeance: number) => void;
const near = newJawView();
const far = newJawView();

/** Smaller of the two jaw gaps at a place on the surface; leaves both views filled in. */
function lookAtJaws(a: ArmatureDesign, g: GrowlerDesign, beta: number): number {
  toJaw(a, g, beta, a.outerRadius, -1, near);
  toJaw(a, g, beta, a.outerRadius, 1, far);
  return Math.min(near.gap, far.gap);
}

/** The share each jaw takes of a piece of surface that sees both: share_A = g_B/(g_A + g_B), so nothing counts twice. */
function linkSurface(tip: number, s: number, permeance: (gap: number) => number, link: Link): void {
  const sum = near.gap + far.gap;
  link(tip, 2 * s, permeance(near.gap) * (far.gap / sum) * (near.beyondEnds ? BEYOND_FACE : 1));
  link(tip, 2 * s + 1, permeance(far.gap) * (near.gap / sum) * (far.beyondEnds ? BEYOND_FACE : 1));
}

function linkTeethToJaws(a: ArmatureDesign, g: GrowlerDesign, rotation: number, link: Link): void {
  const pitch = (2 * Math.PI) / a.slots;
  const arc = pitch - a.slotMouth / a.outerRadius;
  const step = arc / POINTS;
  const strip = MU0 * a.outerRadius * step;
  for (let t = 0; t < a.slots; t++) {
    const from = rotation + pitch * (t + 0.5) - arc / 2;
    for (let k = 0; k < POINTS; k++) {
      lookAtJaws(a, g, from + step * (k + 0.5));
      linkSurface(t, a.slots, (gap) => strip / gap, link);
    }
  }
}

function linkMouths(a: ArmatureDesign, g: GrowlerDesign, rotation: number, link: Link): void {
  const s = a.slots;
  const half = (gap: number) => (0.5 * MU0 * (1 - carterFraction(a.slotMouth, gap)) * a.slotMouth) / gap;
  for (let slot = 0; slot < s; slot++) {
    const gap = lookAtJaws(a, g, rotation + (2 * Math.PI * slot) / s);
    const before = (slot + s - 1) % s;
    linkSurface(before, s, half, link);
    linkSurface(slot, s, half, link);
    link(before, slot, mouthPermeance(a, gap));
  }
}

/**
 * μ0·c/m²·w_t·w_{t+m} between teeth m apart, w = g/(g + τ): teeth that face a jaw have no free air to leak through.
 * Teeth that stand opposite one another are reached by both ways round the core and count twice.
 */
function linkFarTeeth(a: ArmatureDesign, g: GrowlerDesign, rotation: number, link: Link): void {
  const s = a.slots;
  const tau = (2 * Math.PI * a.outerRadius) / s;
  const free = new Float64Array(s);
  for (let t = 0; t < s; t++) {
    const gap = lookAtJaws(a, g, rotation + ((2 * Math.PI) / s) * (t + 0.5));
    free[t] = gap / (gap + tau);
  }
  for (let t = 0; t < s; t++) {
    for (let m = 2; m <= s / 2; m++) {
      const u = (t + m) % s;
      link(t, u, ((MU0 * FAR_TEETH) / (m * m)) * free[t]! * free[u]!);
    }
  }
}

/** Radius of the slot bottoms, m. */
export function rootRadius(a: ArmatureDesign): number {
  return a.outerRadius - a.lipHeight - a.wedgeHeight - 2 * a.layerHeight;
}

/** Width of a tooth at radius r beside the conductors, m. */
export function toothWidth(a: ArmatureDesign, r: number): number {
  return (2 * Math.PI * r) / a.slots - a.slotWidth;
}

function toothBody(a: ArmatureDesign): number {
  const top = toothWidth(a, a.outerRadius - a.lipHeight - a.wedgeHeight);
  const bottom = toothWidth(a, rootRadius(a));
  const overWidth = (2 * a.layerHeight * Math.log(top / bottom)) / (top - bottom);
  return (MU0 * a.relativePermeability) / (TOOTH_BODY * overWidth);
}

function yokeSegment(a: ArmatureDesign): number {
  const root = rootRadius(a);
  const meanPitch = (Math.PI * (root + a.shaftRadius)) / a.slots;
  return (MU0 * a.relativePermeability * (root - a.shaftRadius)) / meanPitch;
}

/** Response of the network to one ampere in each source: 0 the growler winding (per turn), 1 + s the conductors of slot s. */
export interface SlotPotentials {
  readonly slots: number;
  /** Mean vector potential over source a per ampere in source b, H/m; (S+1)², symmetric, the mean over the slots removed. */
  readonly m: Float64Array;
  /** Magnetic potential of tooth tips 0..S-1, near jaw, far jaw per ampere in each source, A; (S+2)×(S+1). */
  readonly tips: Float64Array;
}

/**
 * Slot potential matrix. A unit magnetomotive force in each tooth and in the growler core gives the branch fluxes
 * Λ; slot currents make tooth forces F_t = Σ_{s≤t}(I_s − mean), and A_s − A_{s+1} is the inward flux of tooth s.
 */
export function slotPotentials(a: ArmatureDesign, g: GrowlerDesign, rotation: number): SlotPotentials {
  const net = toothNetwork(a, g, rotation);
  const n = 2 * net.slots + 2;
  factorCholesky(net.nodes, n);
  const u = unitForces(net);
  solveCholesky(net.nodes, n, u, net.slots + 1);
  return toSlotCurrents(net, u, MU0 * g.windingLeakage);
}

/** Right-hand sides: column 0 the growler core, near jaw → far jaw; column 1 + t tooth t, tip → root. */
function unitForces({ slots: s, tooth, core }: ToothNetwork): Float64Array {
  const u = new Float64Array((2 * s + 2) * (s + 1));
  const at = (node: number, column: number) => node * (s + 1) + column;
  u[at(2 * s, 0)] = -core;
  u[at(2 * s + 1, 0)] = core;
  for (let t = 0; t < s; t++) {
    u[at(t, 1 + t)] = -tooth;
    u[at(s + t, 1 + t)] = tooth;
  }
  return u;
}

function toSlotCurrents(net: ToothNetwork, u: Float64Array, windingLeakage: number): SlotPotentials {
  const { slots: s, tooth, core } = net;
  const w = s + 1;
  const tips = new Float64Array((s + 2) * w);
  tips.set(u.subarray(0, s * w), 0);
  tips.set(u.subarray(2 * s * w, (2 * s + 2) * w), s * w);
  const m = new Float64Array(w * w);
  for (let c = 0; c < w; c++) {
    m[c] = core * (tips[s * w + c]! - tips[(s + 1) * w + c]!);
    for (let t = 0; t < s; t++) m[(1 + t) * w + c] = tooth * (tips[t * w + c]! - u[(s + t) * w + c]!);
  }
  m[0]! += core;
  for (let t = 1; t < w; t++) m[t * w + t]! += tooth;
  for (let row = 0; row < w; row++) sumRow(m, row * w, s);
  for (let row = 0; row < s + 2; row++) sumRow(tips, row * w, s);
  for (let c = 0; c < w; c++) sumColumn(m, c, s);
  m[0]! += windingLeakage;
  return { slots: s, m, tips };
}

/** Turns a row over tooth forces into one over slot currents, in place: x_s = Σ_{t≥s} x_t − mean over s. */
function sumRow(x: Float64Array, row: number, s: number): void {
  let mean = 0;
  for (let t = s - 1; t >= 0; t--) {
    const i = row + 1 + t;
    if (t < s - 1) x[i]! += x[i + 1]!;
    mean += x[i]!;
  }
  mean /= s;
  for (let t = 0; t < s; t++) x[row + 1 + t]! -= mean;
}

/** The same down a column: inward tooth fluxes become slot potentials. */
function sumColumn(x: Float64Array, column: number, s: number): void {
  const w = s + 1;
  let mean = 0;
  for (let t = s - 1; t >= 0; t--) {
    const i = (1 + t) * w + column;
    if (t < s - 1) x[i]! += x[i + w]!;
    mean += x[i]!;
  }
  mean /= s;
  for (let t = 0; t < s; t++) x[(1 + t) * w + column]! -= mean;
}
