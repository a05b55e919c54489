import type { GrowlerDesign } from './growler.ts';
import { newJawView, toJaw } from './magnetics/gap.ts';
import { MU0 } from './math/constants.ts';
import type { ArmatureDesign } from './parts/armature.ts';

/** The steel strip of the bench, m and T. Invented; the saturation value is that of spring steel. */
export const STRIP = { thickness: 0.00065, width: 0.013, saturationT: 1.9 } as const;

/** Paper, paint and roughness keep the steel at least this far from the iron, m. */
const CLOSEST = 0.00005;
const ELEMENTS = 52;
/** Fitted to the strip in finite elements: share of the pull that a parallel field would give, over teeth. */
const PULL = 0.775;
/** Over a slot mouth, where the flux bends aside to the nearer tooth edge: weight of permeance and of pull. */
const MOUTH = 0.554;
const MOUTH_PULL = 0.306;
/** The field crowds at the two edges of the strip and pulls there as so much more width would, m. */
const EDGE_PULL = 0.00119;
/** Weight and reach of a jaw, m. */
const JAW = 0.95;
const JAW_REACH = 0.0065;

/**
 * Permeances of the strip to the teeth and jaws near it, per metre of depth, at one place and height; only the
 * places it touches are listed. Written again at every look, so that a map of the strip allocates nothing.
 */
export interface StripLinks {
  /** How many of the places below count. */
  count: number;
  /** Tooth tips 0..S-1, near jaw S, far jaw S+1. */
  readonly places: Int32Array;
  /** p: flux per ampere, H/m; q: pull per ampere squared (twice), N/m/A²; s: the same along the core, jaws only. */
  readonly p: Float64Array;
  readonly q: Float64Array;
  readonly s: Float64Array;
  /** Where each place stands in the list, -1 when it does not. */
  readonly listed: Int32Array;
}

export function newStripLinks(slots: number): StripLinks {
  const n = slots + 2;
  return {
    count: 0,
    places: new Int32Array(n),
    p: new Float64Array(n),
    q: new Float64Array(n),
    s: new Float64Array(n),
    listed: new Int32Array(n).fill(-1),
  };
}

/**
 * Looks at the strip held flat with its middle at `angleDeg` from the bottom and a clear gap to the core.
 * @param rotation of the core, rad  @param heightM m, taken as 0.05 mm at least
 */
export function lookAtStrip(
  a: ArmatureDesign,
  g: GrowlerDesign,
  rotation: number,
  angleDeg: number,
  heightM: number,
  links: StripLinks,
): void {
  clear(links);
  const beta = (angleDeg * Math.PI) / 180;
  const seat = a.outerRadius + Math.max(CLOSEST, heightM);
  const dx = STRIP.width / ELEMENTS;
  for (let k = 0; k < ELEMENTS; k++) {
    const x = (k + 0.5) * dx - STRIP.width / 2;
    const radius = Math.sqrt(x * x + seat * seat);
    addTooth(a, links, beta + Math.atan2(x, seat) - rotation, radius - a.outerRadius, dx);
    const top = seat + STRIP.thickness;
    const back = beta + Math.atan2(x, top);
    const backRadius = Math.sqrt(x * x + top * top);
    addJaw(a, g, links, -1, back, backRadius, beta, dx);
    addJaw(a, g, links, 1, back, backRadius, beta, dx);
  }
  for (let side = -1; side <= 1; side += 2) {
    const x = (side * STRIP.width) / 2;
    const gap = Math.sqrt(x * x + seat * seat) - a.outerRadius;
    addEdge(a, links, beta + Math.atan2(x, seat) - rotation, gap);
  }
}

function clear(links: StripLinks): void {
  for (let k = 0; k < links.count; k++) links.listed[links.places[k]!] = -1;
  links.count = 0;
}

function list(links: StripLinks, place: number): number {
  const known = links.listed[place]!;
  if (known >= 0) return known;
  const k = links.count++;
  links.listed[place] = k;
  links.places[k] = place;
  links.p[k] = 0;
  links.q[k] = 0;
  links.s[k] = 0;
  return k;
}

/** The tooth an element looks at, and how far it stands over the mouth of a slot, m; negative over the tooth. */
function below(a: ArmatureDesign, fromSlot0: number): number {
  const pitch = (2 * Math.PI) / a.slots;
  const turns = fromSlot0 / pitch;
  const slot = Math.round(turns);
  const beside = (turns - slot) * pitch * a.outerRadius;
  overMouth = a.slotMouth / 2 - Math.abs(beside);
  return (((beside >= 0 ? slot : slot - 1) % a.slots) + a.slots) % a.slots;
}
let overMouth = 0;

function addTooth(a: ArmatureDesign, links: StripLinks, fromSlot0: number, gap: number, dx: number): void {
  const k = list(links, below(a, fromSlot0));
  const mouth = overMouth > 0;
  const path = mouth ? Math.sqrt(gap * gap + overMouth * overMouth) : gap;
  links.p[k]! += ((mouth ? MOUTH : 1) * MU0 * dx) / path;
  links.q[k]! += ((mouth ? MOUTH_PULL : 1) * PULL * MU0 * dx) / (path * path);
}

function addEdge(a: ArmatureDesign, links: StripLinks, fromSlot0: number, gap: number): void {
  const k = list(links, below(a, fromSlot0));
  const path2 = gap * gap + (overMouth > 0 ? overMouth * overMouth : 0);
  links.q[k]! += (MU0 * EDGE_PULL) / path2;
}

/**
 * One element of the strip's upper side and a jaw, whose ends stand higher than the strip: pulled straight towards
 * the closest point of the face, and never nearer to it than roughness allows.
 */
function addJaw(
  a: ArmatureDesign,
  g: GrowlerDesign,
  links: StripLinks,
  side: 1 | -1,
  at: number,
  radius: number,
  beta: number,
  dx: number,
): void {
  toJaw(a, g, at, radius, side, view);
  const d = Math.max(CLOSEST, view.distance);
  const fade = 1 + (d / JAW_REACH) ** 2;
  const k = list(links, a.slots + (side < 0 ? 0 : 1));
  links.p[k]! += (MU0 * JAW * dx) / (d * fade);
  const pull = (MU0 * JAW * dx) / (d * d * fade);
  links.q[k]! -= pull * (view.towardX * Math.sin(beta) - view.towardY * Math.cos(beta));
  links.s[k]! += pull * (view.towardX * Math.cos(beta) + view.towardY * Math.sin(beta));
}

const view = newJawView();
