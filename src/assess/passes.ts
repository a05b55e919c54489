import { STRIP_ARC_DEG, wrapDeg } from '../bench/geometry.ts';
import { barOf } from '../bench/places.ts';
import { median } from '../engine/math/median.ts';
import type { ArmatureDesign } from '../engine/parts/armature.ts';
import type { AmmeterReading, LampReading, StripReading } from './readings.ts';

/**
 * Whole passes round the part, put together from single readings. A pass needs its readings in one place over the
 * cradle: the same pair of bars reads differently elsewhere, so readings from two places cannot be compared.
 */
export interface Pass {
  /** Bars stepped between the two probes. */
  readonly spacing: number;
  /** Settled readings that belong to it, one for each bar covered, in the order taken. */
  readonly readings: readonly AmmeterReading[];
}

/** Bars from one probe to the other, the shorter way round. */
export function spacingOf(reading: Pick<AmmeterReading, 'bars'>, bars: number): number {
  const apart = Math.abs(reading.bars[0] - reading.bars[1]);
  return Math.min(apart, bars - apart);
}

/** The bar a pair is counted by: the one from which the other lies `spacing` bars on in the sense of rising angle. */
export function firstBar(reading: Pick<AmmeterReading, 'bars'>, bars: number): number {
  const [a, b] = reading.bars;
  return (((b - a) % bars) + bars) % bars === spacingOf(reading, bars) ? a : b;
}

/** Least needle deflection worth reading: below it the needle hardly leaves its stop whatever the part does. */
const READABLE = 0.05;

/** The readings within half a bar of one place, the last of each bar. */
function atPlace(readings: readonly AmmeterReading[], middleDeg: number, bars: number): AmmeterReading[] {
  const near = readings.filter((r) => Math.abs(wrapDeg(r.middleDeg - middleDeg)) <= 180 / bars + 0.01);
  return [...new Map(near.map((reading) => [firstBar(reading, bars), reading])).values()];
}

function fullest(groups: readonly AmmeterReading[][]): AmmeterReading[] {
  return groups.reduce((best, group) => (group.length > best.length ? group : best), []);
}

/** The fullest pass at one spacing; empty when its needle hardly moved at all. */
function passAt(settled: readonly AmmeterReading[], spacing: number, bars: number): Pass {
  const same = settled.filter((reading) => spacingOf(reading, bars) === spacing);
  const readings = fullest(same.map((reading) => atPlace(same, reading.middleDeg, bars)));
  const readable = median(readings.map((reading) => reading.deflection)) >= READABLE;
  return { spacing, readings: readable ? readings : [] };
}

export function neighbourPass(readings: readonly AmmeterReading[], design: ArmatureDesign): Pass {
  return passAt(
    readings.filter((reading) => reading.settled),
    1,
    design.bars,
  );
}

/** The fullest pass with the probes two or more bars apart. */
export function spacedPass(readings: readonly AmmeterReading[], design: ArmatureDesign): Pass {
  const settled = readings.filter((reading) => reading.settled);
  const spacings = [...new Set(settled.map((reading) => spacingOf(reading, design.bars)))].filter(
    (s) => s > 1,
  );
  const passes = spacings.map((spacing) => passAt(settled, spacing, design.bars));
  return passes.reduce((best, pass) => (pass.readings.length > best.readings.length ? pass : best), {
    spacing: 0,
    readings: [],
  });
}

/** A ground test: one tip on shaft or core, the other on a bar. The bar, or null for any other lamp contact. */
export function groundTested({ places: [a, b] }: Pick<LampReading, 'places'>): number | null {
  const iron = (place: string) => place === 'shaft' || place === 'core';
  if (iron(a)) return barOf(b);
  return iron(b) ? barOf(a) : null;
}

/** Bars whose settled ground test was seen, with the reading. */
export function groundPass(readings: readonly LampReading[]): ReadonlyMap<number, LampReading> {
  const seen = readings.flatMap((reading) => {
    const bar = groundTested(reading);
    return reading.settled && bar !== null ? [[bar, reading] as const] : [];
  });
  return new Map(seen);
}

/** The reachable arc in three parts, degrees from the bottom: where a short can be felt depends on the winding. */
export const STRIP_ZONES = [
  { name: 'far side', fromDeg: STRIP_ARC_DEG.clearFrom, toDeg: 150 },
  { name: 'top', fromDeg: 150, toDeg: 210 },
  { name: 'near side', fromDeg: 210, toDeg: STRIP_ARC_DEG.clearTo },
] as const;

/** A slot counts when the strip was over it, felt, for this long in all, ms. Ours, no source. */
const STRIP_FELT_MS = 100;

/** Held higher than this the strip is no longer just above the core, mm; references G03 names 0.79 mm. */
const JUST_ABOVE_MM = 1;

/** The slot under the strip: slot s has its middle at rotation + 360 s / slots from the bottom. */
export function slotUnder(
  design: Pick<ArmatureDesign, 'slots'>,
  angleDeg: number,
  rotationDeg: number,
): number {
  const slot = Math.round(((angleDeg - rotationDeg) * design.slots) / 360) % design.slots;
  return (slot + design.slots) % design.slots;
}

/** Slots felt in each zone of the arc, on HIGH, in the order of STRIP_ZONES. */
export function stripPass(readings: readonly StripReading[], design: ArmatureDesign): ReadonlySet<number>[] {
  return STRIP_ZONES.map(({ fromDeg, toDeg }) => {
    const felt = new Map<number, number>();
    for (const reading of readings) {
      if (!reading.excited || reading.heightMm > JUST_ABOVE_MM) continue;
      if (reading.angleDeg < fromDeg || reading.angleDeg > toDeg) continue;
      const slot = slotUnder(design, reading.angleDeg, reading.rotationDeg);
      felt.set(slot, (felt.get(slot) ?? 0) + reading.lastedMs);
    }
    return new Set([...felt].filter(([, ms]) => ms >= STRIP_FELT_MS).map(([slot]) => slot));
  });
}
