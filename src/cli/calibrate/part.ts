import { FAULTS_MOST } from '../../assess/evidence/cases.ts';
import {
  familyOf,
  type InsulationKind,
  isAlike,
  PRIORS,
  type Priors,
  rarityOf,
  type Severity,
  WEAK_OHM,
  type WindingKind,
} from '../../assess/evidence/priors.ts';
import { coilBelow, faultOf, listSuspects, locate } from '../../assess/evidence/suspects.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';

/** A part drawn as often as such parts come to the bench. */
export interface DrawnPart {
  readonly design: ArmatureDesign;
  readonly faults: readonly ArmatureFault[];
  readonly dirty: boolean;
}

export type Draw = () => number;

export function pick<T>(draw: Draw, from: readonly T[]): T {
  return from[Math.floor(draw() * from.length)]!;
}

/** Index drawn by weight. */
export function pickWeighted(draw: Draw, weights: ArrayLike<number>): number {
  let total = 0;
  for (let k = 0; k < weights.length; k++) total += weights[k]!;
  let left = draw() * total;
  for (let k = 0; k < weights.length; k++) {
    left -= weights[k]!;
    if (left < 0) return k;
  }
  return weights.length - 1;
}

/**
 * Draws winding, insulation and surface by the priors, one fault or as many together as the engine lists, with
 * severities between the grid's. "None of these" is left out: nobody can draw what is not listed.
 */
export function drawPart(design: ArmatureDesign, draw: Draw): DrawnPart {
  const { kinds, insulation, grounds, dirty } = drawKinds(PRIORS[familyOf(design)], draw);
  const drawn: ArmatureFault[] = [];
  while (drawn.length < kinds.length) {
    const next = drawWinding(design, kinds[drawn.length]!, draw);
    if (drawn.every((other) => apart(other, next))) drawn.push(next);
  }
  if (grounds === 2) drawn.push(...drawGrounds(design, draw));
  else if (insulation !== null) drawn.push(drawInsulation(design, insulation, draw));
  if (dirty) drawn.push({ kind: 'dirtyCommutator' });
  return { design, faults: drawn, dirty };
}

/** What is wrong with a part, its places and severities left out. */
interface Kinds {
  readonly kinds: readonly WindingKind[];
  readonly insulation: InsulationKind | null;
  readonly grounds: 0 | 1 | 2;
  readonly dirty: boolean;
}

/** Drawn by chance alone and kept as often as it is rare for such things to come together. */
function drawKinds(priors: Priors, draw: Draw): Kinds {
  for (;;) {
    const drawn = drawByChance(priors, draw);
    if (draw() < keptShare(priors, drawn)) return drawn;
  }
}

function drawByChance({ winding, insulation, dirty }: Priors, draw: Draw): Kinds {
  const one = Object.values(winding).reduce((sum, odds) => sum + odds, 0);
  // Sets, not lists: so many faults come in any order.
  const counts = [1];
  for (let n = 1; n <= FAULTS_MOST; n++) counts.push((counts[n - 1]! * one) / n);
  const kinds = Array.from({ length: pickWeighted(draw, counts) }, () => pickKind(winding, draw));
  const bad = Object.values(insulation).reduce((sum, odds) => sum + odds, 0);
  const kind = draw() < bad / (1 + bad) ? pickKind(insulation, draw) : null;
  const grounds = kind?.startsWith('grounded') ? (draw() < 0.5 ? 1 : 2) : 0;
  return { kinds, insulation: kind, grounds, dirty: draw() < dirty / (1 + dirty) };
}

function keptShare(priors: Priors, { kinds, insulation, grounds, dirty }: Kinds): number {
  const { groundedBar, groundedCoil } = priors.insulation;
  const apartFrom = kinds.filter((kind, n) => !kinds.slice(0, n).some((other) => isAlike(kind, other)));
  // The engine lists two causes at most.
  if (apartFrom.length > 2) return 0;
  const things = (kinds.length > 0 ? 1 : 0) + (insulation === null ? 0 : 1) + (dirty ? 1 : 0);
  const second = grounds === 2 ? (priors.alike * (groundedBar + groundedCoil)) / 2 : 1;
  return rarityOf(priors, kinds) * priors.another ** Math.max(0, things - 1) * second;
}

function pickKind<K extends string>(odds: Readonly<Record<K, number>>, draw: Draw): K {
  const kinds = Object.keys(odds) as K[];
  return kinds[pickWeighted(draw, Object.values<number>(odds))]!;
}

function drawWinding(design: ArmatureDesign, kind: WindingKind, draw: Draw): ArmatureFault {
  const suspects = listSuspects(design, PRIORS[familyOf(design)]);
  const weights = suspects.odds.map((odds, k) => (locate(suspects, k)?.block.kind === kind ? odds : 0));
  const at = locate(suspects, pickWeighted(draw, weights))!;
  const { severities } = at.block;
  const off = { ...at.block, severities: severities.map((_, k) => offGrid(severities, k, draw)) };
  return faultOf(design, off, at.place, at.severity);
}

/** Anywhere from half-way to the lower to half-way to the higher severity, evenly on the logarithm. */
function offGrid(severities: readonly Severity[], k: number, draw: Draw): Severity {
  const here = severities[k]!;
  if (here.ohm === 'open') return here;
  const finite = severities.flatMap(({ ohm }) => (ohm === 'open' ? [] : [ohm]));
  const step = Math.log(finite[finite.length - 1]! / finite[0]!) / Math.max(1, finite.length - 1);
  return { ...here, ohm: here.ohm * Math.exp((draw() - 0.5) * step) };
}

/** Two hard grounds, at bars. */
function drawGrounds({ bars }: ArmatureDesign, draw: Draw): ArmatureFault[] {
  const first = Math.floor(draw() * bars);
  const second = (first + 1 + Math.floor(draw() * (bars - 1))) % bars;
  return [first, second].map((bar) => ({ kind: 'groundedBar', bar, ohm: 0.01 * 40 ** draw() }));
}

function drawInsulation(design: ArmatureDesign, kind: InsulationKind, draw: Draw): ArmatureFault {
  const place = Math.floor(draw() * design.bars);
  if (kind === 'groundedBar') return { kind: 'groundedBar', bar: place, ohm: 0.1 + 5 * draw() };
  if (kind === 'groundedCoil')
    return { kind: 'groundedCoil', coil: place, fraction: draw(), ohm: 0.1 + 5 * draw() };
  if (kind === 'weakBreaksDown') return { kind: 'weakInsulation', ohm: 1e6, breakdownV: 100 };
  const ohm = WEAK_OHM.least * (WEAK_OHM.most / WEAK_OHM.least) ** draw();
  return { kind: 'weakInsulation', ohm, breakdownV: null };
}

/** Two winding faults a part can have at once. */
function apart(one: ArmatureFault, other: ArmatureFault): boolean {
  const places = (fault: ArmatureFault): number[] => {
    if ('coil' in fault) return [fault.coil];
    if ('bar' in fault) return [fault.bar];
    return 'topCoil' in fault ? [fault.topCoil, fault.bottomCoil] : [];
  };
  return !places(one).some((place) => places(other).includes(place));
}

/** The same part with every severity moved beyond or to the edge of its list: up to twice as hard or soft. */
export function offRange(part: DrawnPart, draw: Draw): DrawnPart {
  const faults = part.faults.map((fault): ArmatureFault => {
    if (!('ohm' in fault) || fault.ohm === 'open' || fault.kind === 'weakInsulation') return fault;
    return { ...fault, ohm: fault.ohm * 2 ** (2 * draw() - 1) } as ArmatureFault;
  });
  return { ...part, faults };
}

/** Faults that come together at two places apart from one another, in some combinations. */
type Together = (design: ArmatureDesign, first: number, second: number, draw: Draw) => ArmatureFault[][];

/** Several alike: two grounds, two shorts, three bad joints. */
export const ALIKE: Together = (design, first, second, draw) => [
  [
    { kind: 'groundedBar', bar: first, ohm: 0.02 },
    { kind: 'groundedBar', bar: second, ohm: 0.02 },
  ],
  [
    { kind: 'turnShort', coil: first, turns: design.turns, ohm: 1e-3 },
    { kind: 'turnShort', coil: second, turns: design.turns, ohm: 1e-3 },
  ],
  [first, second, (second + 3) % design.bars].map((bar) => joint(bar, draw)),
];

/** Three bridges, two coils grounded inside, a joint with a bridge and a reversed coil. */
export const THREE: Together = (design, first, second, draw) => [
  groundedInside(first, second, draw),
  [first, second, (second + 3) % design.bars].map((bar) => bridge(bar, draw)),
  [joint(first, draw), bridge(second, draw), acrossFrom(design, first)],
];

/** What is on no list: coils grounded inside, two that touch others, three things of three sorts. */
export const UNLISTED: Together = (design, first, second, draw) => [
  groundedInside(first, second, draw),
  [first, second].map((topCoil) => ({
    kind: 'coilShort',
    topCoil,
    bottomCoil: coilBelow(design, topCoil, 0),
    ohm: 1e-3,
  })),
  [joint(first, draw), bridge(second, draw), acrossFrom(design, first)],
  [
    joint(first, draw),
    { kind: 'openCoil', coil: second },
    { kind: 'turnShort', coil: (second + 3) % design.bars, turns: design.turns, ohm: 1e-3 },
  ],
];

function groundedInside(first: number, second: number, draw: Draw): ArmatureFault[] {
  return [first, second].map((coil) => ({
    kind: 'groundedCoil',
    coil,
    fraction: 0.2 + 0.6 * draw(),
    ohm: 0.05,
  }));
}

function acrossFrom({ bars }: ArmatureDesign, first: number): ArmatureFault {
  return { kind: 'reversedCoil', coil: (first + 1 + Math.floor(bars / 2)) % bars };
}

function joint(bar: number, draw: Draw): ArmatureFault {
  return { kind: 'riserJoint', bar, form: 'bar', ohm: 0.01 + 0.1 * draw() };
}

function bridge(bar: number, draw: Draw): ArmatureFault {
  return { kind: 'bridgedBars', bar, ohm: 3e-4 * (1 + 9 * draw()), by: 'copper' };
}

/** A part with something beside its faults that no list has. */
export function withAnother(part: DrawnPart, draw: Draw, together: Together): DrawnPart {
  const { design } = part;
  const first = Math.floor(draw() * design.bars);
  const second = (first + 2 + Math.floor(draw() * (design.bars - 6))) % design.bars;
  const added = pick(draw, together(design, first, second, draw));
  const kept = part.faults.filter(
    (fault) => fault.kind === 'dirtyCommutator' || added.every((other) => apart(fault, other)),
  );
  return { ...part, faults: [...kept.filter(({ kind }) => !kind.startsWith('grounded')), ...added] };
}
