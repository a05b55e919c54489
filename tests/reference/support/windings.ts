import { windingTopology } from '../../../src/engine/circuit/topology.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import { type CoilPlace, coilPlaces } from '../../../src/engine/parts/winding.ts';
import { checkWinding } from '../../../src/engine/parts/windingRules.ts';
import { FORCED_WAVE_35, LAP_24, LAP_28, WAVE_23 } from '../../engine/support/parts.ts';
import { unitRing } from './unitRing.ts';

/** Dimensions thin enough for any of these slot counts, so that only the winding can be at fault. */
const THIN = {
  slotMouth: 0.0004,
  slotWidth: 0.0006,
  conductorArea: 1e-7,
  turns: 1,
  coilsPerSlot: 1,
} as const;

export function lap(bars: number, poles: number, change: Partial<ArmatureDesign> = {}): ArmatureDesign {
  const spanSlots = Math.round(bars / poles);
  const counts = { winding: 'lap', poles, bars, slots: bars, commutatorPitch: 1, spanSlots } as const;
  return { ...LAP_28, ...THIN, ...counts, ...change };
}

export function wave(bars: number, poles: number, pitch: number): ArmatureDesign {
  return { ...lap(bars, poles), winding: 'wave', commutatorPitch: pitch };
}

/** Whether an armature can be wound. */
export const can = (a: ArmatureDesign) => checkWinding(a).length === 0;
export const list = (values: readonly number[]) => (values.length > 0 ? values.join(', ') : 'none');

/** Commutator pitches with which a wave of so many bars is accepted. */
export function wavePitches(bars: number, poles: number): string {
  const all = Array.from({ length: bars }, (_, pitch) => pitch);
  return list(all.filter((pitch) => can(wave(bars, poles, pitch))));
}

/** Commutator pitches with which a lap of 24 bars on 4 poles is accepted. */
export function lapPitches(): string {
  return list([-3, -2, -1, 0, 1, 2, 3].filter((commutatorPitch) => can(lap(24, 4, { commutatorPitch }))));
}

/** Coil spans accepted on so many slots. */
export function spans(slots: number, poles: number): number[] {
  const all = Array.from({ length: slots }, (_, i) => i + 1);
  return all.filter((spanSlots) => can(lap(slots, poles, { spanSlots })));
}

/** Numbers of a coil's two sides when top sides are the odd and bottom sides the even ones, slot by slot. */
const topSide = (p: CoilPlace) => 2 * p.topSlot + 1;
const bottomSide = (p: CoilPlace) => 2 * p.bottomSlot + 2;
/** From the near side of coil 0 to its far side. */
export const backPitch = (a: ArmatureDesign) => bottomSide(coilPlaces(a)[0]!) - topSide(coilPlaces(a)[0]!);

/** From the far side of coil 0 to the near side of the coil it goes on to; positive where it goes back (lap). */
export function frontPitch(a: ArmatureDesign): number {
  const places = coilPlaces(a);
  const next = places[places[0]!.endBar]!;
  const forward = topSide(next) - bottomSide(places[0]!);
  return a.winding === 'lap' ? -forward : forward;
}

/**
 * Parallel paths from the resistance between all positive and all negative brushes: C coils in `paths` branches of
 * C/paths each make R = C/paths². Brushes stand a pole pitch apart and touch one bar each.
 */
export function paths(a: ArmatureDesign): number {
  const brush = (pole: number) => Math.round((a.bars * pole) / a.poles);
  const links = Array.from({ length: a.poles - 2 }, (_, i) => ({
    from: brush(i),
    to: brush(i + 2),
    ohm: 1e-9,
  }));
  return Math.round(
    Math.sqrt(a.bars / unitRing(a, [], a.winding === 'lap' ? links : [])(brush(0), brush(1))),
  );
}

/** Separate closed circuits of a winding, by walking from bar to bar. */
export function closedCircuits(a: ArmatureDesign): number {
  const places = coilPlaces(a);
  const seen = new Set<number>();
  let rings = 0;
  for (let start = 0; start < a.bars; start++) {
    if (seen.has(start)) continue;
    rings++;
    for (let bar = start; !seen.has(bar); bar = places[bar]!.endBar) seen.add(bar);
  }
  return rings;
}

/** Coils passed on the shorter way round the ring from bar 0 to bar 1. */
export function coilsBetweenNeighbours(a: ArmatureDesign): number {
  const places = coilPlaces(a);
  const walk = (from: number, to: number) => {
    let n = 0;
    for (let bar = from; bar !== to; bar = places[bar]!.endBar) n++;
    return n;
  };
  return Math.min(walk(0, 1), walk(1, 0));
}

/** Bars from one end of an equaliser to the other, 36 bars on 6 poles. */
export function equaliserSteps(): string {
  const a = lap(36, 6, { equalised: true });
  const links = windingTopology(a, []).segments.filter((s) => s.coil < 0);
  return list([...new Set(links.map((s) => (s.to - s.from + a.bars) % a.bars))]);
}

/** Branches of the circuit beyond those of the working coils: the dummy coil must have none. */
export function dummyBranches(): number {
  const working = coilPlaces(FORCED_WAVE_35).length;
  const { windingSegments } = windingTopology(FORCED_WAVE_35, []);
  return windingSegments - working;
}

/** Whether equalisers are accepted on an armature. */
export const equalisers = (a: ArmatureDesign) => (can({ ...a, equalised: true }) ? 'accepted' : 'refused');

/** Middle of the first and last of a sorted list. */
export function middle(values: readonly number[]): number {
  return (values[0]! + values.at(-1)!) / 2;
}

/** Largest remainder by two of the coil sides of some windings. */
export function oddSides(): number {
  const counted = [WAVE_23, LAP_28, LAP_24, FORCED_WAVE_35].map((a) => {
    const { segments, windingSegments } = windingTopology(a, []);
    const sides = segments.slice(0, windingSegments).map((s) => s.top - s.bottom);
    return sides.reduce((sum, n) => sum + n, 0) % 2;
  });
  return Math.max(...counted);
}
