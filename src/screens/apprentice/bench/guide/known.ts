import type { CommutatorGeometry } from '../../../../bench/geometry.ts';
import { NOTHING_WATCHED, type Watched, watch } from '../../../../bench/guide/guide.ts';
import type { Observation } from '../../../../bench/observation.ts';
import { barOf, type Place } from '../../../../bench/places.ts';
import { printedA } from '../../../../bench/scale.ts';
import { stepsUp } from '../../../shared/count.ts';

/**
 * What someone who has watched the bench knows of the work so far, from eyes and ears alone. Folded from one
 * observation after another; a reload forgets it, and the guide then asks for a little of the work again.
 */
export interface Known {
  /** Kinds of places looked at under the lens. */
  readonly looked: readonly ('riser' | 'bar' | 'core')[];
  /** Largest reading at each spacing tried, bars up from probe 1 to probe 2 → A. */
  readonly spacings: ReadonlyMap<number, number>;
  /** The lamp was seen to light, tips together, before anything was tested with it. */
  readonly proved: boolean;
  /** And again after the last test. */
  readonly provedAgain: boolean;
  /** Bars that had one lamp tip while the other was on shaft or core, on LOW. */
  readonly lampBars: readonly number[];
  /** For each place the strip was held on HIGH, by its angle in degrees: the rotations felt there, to the degree. */
  readonly strip: ReadonlyMap<number, readonly number[]>;
  /** What the bench's own guide goes by for field frame, brush plate and rail tools. */
  readonly watched: Watched;
  /** Minutes by the book when last seen: when they rise, what was felt before is of another part. */
  readonly minutesSpent: number;
  /** Growler or armature was seen too hot, and has not cooled enough since. */
  readonly cooling: boolean;
}

export const NOTHING_KNOWN: Known = {
  looked: [],
  spacings: new Map(),
  proved: false,
  provedAgain: false,
  lampBars: [],
  strip: new Map(),
  watched: NOTHING_WATCHED,
  minutesSpent: 0,
  cooling: false,
};

/** Brightness from which a lamp counts as lighting. */
const LIGHTS = 4;

/** @returns the same object when the observation adds nothing */
export function fold(known: Known, seen: Observation, geometry: CommutatorGeometry): Known {
  return [foldWork, foldHeat, foldLook, foldProof, foldLamp, foldStrip, foldWatched].reduce(
    (so, step) => step(so, seen),
    foldSpacing(known, seen, geometry),
  );
}

/** A remedy makes another part of it: the strip has to go all round again. Spacings that showed nothing tell nothing. */
function foldWork(known: Known, { minutesSpent }: Observation): Known {
  if (minutesSpent === known.minutesSpent) return known;
  const spacings = new Map([...known.spacings].filter(([, reading]) => reading > 0));
  return { ...known, minutesSpent, strip: new Map(), spacings };
}

function foldHeat(known: Known, { growlerHeat, partHeat, supply }: Observation): Known {
  const tooHot = growlerHeat === 'tooHotToTouch' || partHeat === 'smoking' || supply === 'cutOut';
  const coolAgain = growlerHeat !== 'hot' && partHeat !== 'hot' && !tooHot;
  const cooling = tooHot || (known.cooling && !coolAgain);
  return cooling === known.cooling ? known : { ...known, cooling };
}

function foldWatched(known: Known, seen: Observation): Known {
  const watched = watch(known.watched, seen);
  return watched === known.watched ? known : { ...known, watched };
}

function foldLook(known: Known, { look }: Observation): Known {
  if (!look) return known;
  const [kind] = look.place.split(':');
  if (kind !== 'riser' && kind !== 'bar' && kind !== 'core') return known;
  return known.looked.includes(kind) ? known : { ...known, looked: [...known.looked, kind] };
}

function foldSpacing(known: Known, seen: Observation, geometry: CommutatorGeometry): Known {
  const [one, other] = [seen.leads['ammeter.1'].touches, seen.leads['ammeter.2'].touches];
  const [first, second] = [one && barOf(one), other && barOf(other)];
  const reads = seen.supply === 'on' && seen.selector === 'high' && seen.needle.atRest;
  if (!reads || first === null || second === null || first === second) return known;
  const apart = stepsUp(first, second, geometry.bars);
  const reading = printedA(seen.needle, seen.rangeA);
  if (reading <= (known.spacings.get(apart) ?? -1)) return known;
  return { ...known, spacings: new Map(known.spacings).set(apart, reading) };
}

function foldProof(known: Known, seen: Observation): Known {
  if (seen.supply !== 'on' || seen.selector !== 'low') return spellOver(known);
  if (!tipsTogether(seen) || seen.lamp.glow < LIGHTS) return known;
  if (known.lampBars.length === 0) return known.proved ? known : { ...known, proved: true };
  return known.provedAgain ? known : { ...known, provedAgain: true };
}

/** What was proved on one spell of LOW does not hold for the next; bars that had no proof afterwards are tested again. */
function spellOver(known: Known): Known {
  const lampBars = known.provedAgain ? known.lampBars : NOTHING_KNOWN.lampBars;
  if (!known.proved && lampBars.length === known.lampBars.length) return known;
  return { ...known, proved: false, lampBars };
}

export function tipsTogether({ leads }: Observation): boolean {
  return leads['lamp.1'].touches === 'tip:lamp.2' || leads['lamp.2'].touches === 'tip:lamp.1';
}

function foldLamp(known: Known, seen: Observation): Known {
  const bar = lampBar(seen);
  if (bar === null || seen.supply !== 'on' || seen.selector !== 'low') return known;
  if (known.lampBars.includes(bar)) return known;
  return { ...known, lampBars: [...known.lampBars, bar], provedAgain: false };
}

/** The bar under one lamp tip while the other is on shaft or core, or null. */
export function lampBar({ leads }: Observation): number | null {
  const ends = [leads['lamp.1'].touches, leads['lamp.2'].touches].filter(
    (place): place is Place => place !== null,
  );
  if (!ends.some((place) => place === 'core' || place === 'shaft')) return null;
  return ends.map(barOf).find((bar) => bar !== null) ?? null;
}

function foldStrip(known: Known, { strip, supply, selector, rotationDeg }: Observation): Known {
  if (strip.at !== 'core' || strip.angleDeg === null || supply !== 'on' || selector !== 'high') return known;
  const angle = Math.round(strip.angleDeg);
  const felt = known.strip.get(angle) ?? [];
  const rotation = Math.round(rotationDeg);
  if (felt.includes(rotation)) return known;
  return { ...known, strip: new Map(known.strip).set(angle, [...felt, rotation]) };
}
