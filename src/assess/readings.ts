import type { RangeA, Selector } from '../bench/action.ts';
import { wrapDeg } from '../bench/geometry.ts';
import type { Observation } from '../bench/observation.ts';
import { barOf, type Place } from '../bench/places.ts';
import { conditionsOf, lampWhole } from './conditions.ts';
import { excited, type Film, lasted, type Stretch } from './film.ts';
import {
  type DropReading,
  dropReadings,
  type GaugeReading,
  gaugeReadings,
  type MegohmReading,
  megohmReadings,
} from './railReadings.ts';
import { runsOf } from './runs.ts';

/**
 * What was really touched and seen to settle, taken from the film. A contact that was made and left before the needle
 * stood still, or before an eye could tell a dark lamp from one about to light, is no reading.
 */

/** A lamp filament settles within a quarter of a second; an eye needs about as long. Ours, no source. */
const LAMP_SETTLED_MS = 300;
/** A filament glows on for about a second after it was last lit: a fainter light must be looked at for longer, ms. */
const AFTERGLOW_MS = 1200;
const BRIGHT_GLOW = 5;
/** Brightness from which a lamp with its tips together is seen to work. */
const PROOF_GLOW = 4;

/** The ammeter lying across two bars. */
export interface AmmeterReading {
  /** Entry that made the contact. */
  readonly entry: number;
  readonly bars: readonly [number, number];
  /** Middle of the shorter arc between the two points touched, degrees from the bottom. */
  readonly middleDeg: number;
  readonly selector: Selector;
  readonly rangeA: RangeA;
  readonly deflection: number;
  readonly pegged: boolean;
  /** Needle at rest, on HIGH, armature in the cradle, within the scale. */
  readonly settled: boolean;
  readonly lastedMs: number;
}

/** The two lamp tips on metal of the part. */
export interface LampReading {
  readonly entry: number;
  readonly places: readonly [Place, Place];
  readonly selector: Selector;
  readonly glow: number;
  /** Live, able to light, and looked at for long enough. */
  readonly settled: boolean;
  /** Seen to light, which a filament still cooling from the proof before is not. */
  readonly lit: boolean;
  /** The two field brushes were kept apart. */
  readonly brushesApart: boolean;
  /** Place that somebody leaned on with a probe, or null. */
  readonly leanedOn: Place | null;
}

/** The lamp's tips held together and seen to light. */
export interface Proof {
  readonly entry: number;
}

/** The strip over the core for one stretch. */
export interface StripReading {
  readonly entry: number;
  readonly angleDeg: number;
  readonly heightMm: number;
  readonly rotationDeg: number;
  readonly selector: Selector;
  /** On HIGH, armature in the cradle. */
  readonly excited: boolean;
  readonly pull: number;
  readonly buzz: number;
  readonly lastedMs: number;
}

export interface Readings {
  readonly ammeter: readonly AmmeterReading[];
  readonly lamp: readonly LampReading[];
  readonly proofs: readonly Proof[];
  readonly strip: readonly StripReading[];
  readonly megohm: readonly MegohmReading[];
  readonly drop: readonly DropReading[];
  readonly gauges: readonly GaugeReading[];
}

/** The readings taken between two entries: not before the first, and before the second. */
export function within(readings: Readings, from: number, before: number): Readings {
  const inside = <T extends { readonly entry: number }>(list: readonly T[]) =>
    list.filter(({ entry }) => entry >= from && entry < before);
  return {
    ammeter: inside(readings.ammeter),
    lamp: inside(readings.lamp),
    proofs: inside(readings.proofs),
    strip: inside(readings.strip),
    megohm: inside(readings.megohm),
    drop: inside(readings.drop),
    gauges: inside(readings.gauges),
  };
}

function middle(a: number, b: number): number {
  return wrapDeg(a + wrapDeg(b - a) / 2);
}

function ammeterReading(stretch: Stretch): AmmeterReading[] {
  const { seen } = stretch;
  const [one, two] = [seen.leads['ammeter.1'], seen.leads['ammeter.2']];
  const bars = [one, two].map((lead) => (lead.touches === null ? null : barOf(lead.touches)));
  if (bars[0] == null || bars[1] == null || bars[0] === bars[1]) return [];
  const { deflection, pegged } = seen.needle;
  return [
    {
      entry: stretch.since,
      bars: [bars[0], bars[1]],
      middleDeg: middle(one.stationDeg!, two.stationDeg!),
      selector: seen.supply === 'on' ? seen.selector : 'off',
      rangeA: seen.rangeA,
      deflection,
      pegged,
      settled: excited(seen, 'high') && stretch.needleRested && !pegged,
      lastedMs: lasted(stretch),
    },
  ];
}

function lampPlaces(seen: Observation): [Place, Place] | null {
  const one = seen.leads['lamp.1'].touches;
  const two = seen.leads['lamp.2'].touches;
  const onPart = (place: Place | null) => place !== null && !place.startsWith('tip:');
  return onPart(one) && onPart(two) ? [one!, two!] : null;
}

/** The lamp is live: whether an armature closes the magnetic circuit makes no difference to it. */
function lampLive({ supply, selector }: Observation): boolean {
  return supply === 'on' && selector === 'low';
}

function leanedOn({ leads }: Observation): Place | null {
  return Object.values(leads).find(({ leaning }) => leaning)?.touches ?? null;
}

function lampKey({ seen }: Stretch): string | null {
  const places = lampPlaces(seen);
  return places === null
    ? null
    : `${places.join(' ')} ${lampLive(seen)} ${seen.brushesApart} ${leanedOn(seen)}`;
}

/** @param works whether the lamp could light at all after an entry: a dead one is dark whatever it lies on */
function lampReading(run: readonly Stretch[], works: (entry: number) => boolean): LampReading {
  const { seen } = run.at(-1)!;
  const entry = run[0]!.since;
  const lastedMs = run.reduce((sum, stretch) => sum + lasted(stretch), 0);
  const { glow } = seen.lamp;
  // A faint light that may yet go out is neither lit nor dark.
  const decided = glow === 0 || glow >= BRIGHT_GLOW || lastedMs >= AFTERGLOW_MS;
  const settled = lampLive(seen) && works(entry) && decided && lastedMs >= LAMP_SETTLED_MS;
  return {
    entry,
    places: lampPlaces(seen)!,
    selector: seen.supply === 'on' ? seen.selector : 'off',
    glow,
    settled,
    lit: settled && glow > 0,
    brushesApart: seen.brushesApart,
    leanedOn: leanedOn(seen),
  };
}

function proof({ seen, since }: Stretch): Proof[] {
  const together =
    seen.leads['lamp.1'].touches === 'tip:lamp.2' || seen.leads['lamp.2'].touches === 'tip:lamp.1';
  return together && seen.lamp.glow >= PROOF_GLOW ? [{ entry: since }] : [];
}

function stripReading(stretch: Stretch): StripReading[] {
  const { seen } = stretch;
  const { at, angleDeg, heightMm } = seen.strip;
  if (at !== 'core' || angleDeg === null || heightMm === null) return [];
  return [
    {
      entry: stretch.since,
      angleDeg,
      heightMm,
      rotationDeg: seen.rotationDeg,
      selector: seen.supply === 'on' ? seen.selector : 'off',
      excited: excited(seen, 'high'),
      pull: seen.strip.pull,
      buzz: seen.strip.buzz,
      lastedMs: lasted(stretch),
    },
  ];
}

export function readingsOf(film: Pick<Film, 'stretches' | 'scenario' | 'design' | 'entries'>): Readings {
  const { stretches } = film;
  const conditions = conditionsOf(film);
  const works = (entry: number) => lampWhole(conditions[entry + 1]!);
  return {
    ammeter: stretches.flatMap(ammeterReading),
    lamp: runsOf(stretches, lampKey).map((run) => lampReading(run, works)),
    proofs: stretches.flatMap(proof),
    strip: stretches.flatMap(stripReading),
    megohm: megohmReadings(stretches),
    drop: dropReadings(stretches),
    gauges: gaugeReadings(stretches),
  };
}
