import { familyOf, PRIORS, type Severity, WEAK_OHM } from '../../assess/evidence/priors.ts';
import { faultOf, listSuspects, locate } from '../../assess/evidence/suspects.ts';
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
 * Draws winding, insulation and surface by the priors, singles and pairs, with severities between the grid's.
 * "None of these" is left out: nobody can draw what is not listed.
 */
export function drawPart(design: ArmatureDesign, draw: Draw): DrawnPart {
  const priors = PRIORS[familyOf(design)];
  const { winding, insulation, another, dirty } = priors;
  const one = Object.values(winding).reduce((sum, odds) => sum + odds, 0);
  const ground = Object.values(insulation).reduce((sum, odds) => sum + odds, 0);
  // How many winding faults, whether the insulation is bad, whether the surface is dirty.
  const states: { readonly faults: number; readonly bad: number; readonly dirt: number }[] = [];
  for (const faults of [0, 1, 2])
    for (const bad of [0, 1]) for (const dirt of [0, 1]) states.push({ faults, bad, dirt });
  const odds = states.map(({ faults, bad, dirt }) => {
    const rarity = another ** Math.max(0, faults + bad + dirt - 1);
    return (faults === 2 ? one * one * 0.5 : one ** faults) * ground ** bad * dirty ** dirt * rarity;
  });
  const state = states[pickWeighted(draw, odds)]!;
  const drawn: ArmatureFault[] = [];
  while (drawn.length < state.faults) {
    const next = drawWinding(design, draw);
    if (drawn.every((other) => apart(other, next))) drawn.push(next);
  }
  if (state.bad === 1) drawn.push(drawInsulation(design, draw));
  if (state.dirt === 1) drawn.push({ kind: 'dirtyCommutator' });
  return { design, faults: drawn, dirty: state.dirt === 1 };
}

function drawWinding(design: ArmatureDesign, draw: Draw): ArmatureFault {
  const suspects = listSuspects(design, PRIORS[familyOf(design)]);
  const weights = suspects.odds.slice();
  weights[0] = 0;
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

function drawInsulation(design: ArmatureDesign, draw: Draw): ArmatureFault {
  const { insulation } = PRIORS[familyOf(design)];
  const kinds = Object.keys(insulation) as (keyof typeof insulation)[];
  const kind = kinds[pickWeighted(draw, Object.values(insulation))]!;
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

/** Others: coils grounded inside, three bridges, a joint with a bridge and a reversed coil. */
export const OTHERS: Together = (design, first, second, draw) => [
  [first, second].map((coil) => ({ kind: 'groundedCoil', coil, fraction: 0.2 + 0.6 * draw(), ohm: 0.05 })),
  [first, second, (second + 3) % design.bars].map((bar) => bridge(bar, draw)),
  [
    joint(first, draw),
    bridge(second, draw),
    { kind: 'reversedCoil', coil: (first + 1 + Math.floor(design.bars / 2)) % design.bars },
  ],
];

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
