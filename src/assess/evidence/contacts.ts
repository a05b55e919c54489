import { STRIP_ARC_DEG } from '../../bench/geometry.ts';
import type { Observation } from '../../bench/observation.ts';
import { barOf, type Place } from '../../bench/places.ts';
import { excited, type Film, lasted, type Stretch } from '../film.ts';
import { dropReadings, megohmReadings } from '../railReadings.ts';
import {
  type DropReading,
  type LampReading,
  type LookReading,
  lampShows,
  type MegohmReading,
  type MeterReading,
  type StripReading,
} from './reading.ts';

/**
 * Readings taken from a film by walking its contacts: one for each contact of the ammeter whose needle came to rest,
 * one for each lamp contact that can be believed, one for each place of the strip, one for each way the leads of
 * insulation tester and millivolt drop lay, one for each place under the lens.
 * However long a contact is held, it is one reading.
 */
export interface Contacts {
  readonly meter: readonly MeterReading[];
  readonly lamp: readonly LampReading[];
  readonly strip: readonly StripReading[];
  readonly tester: readonly MegohmReading[];
  readonly drop: readonly DropReading[];
  readonly looks: readonly LookReading[];
  /** Entries of dark lamp results that no proof before or none after makes believable. */
  readonly unproved: readonly number[];
}

/** Stretches in which one thing is held unchanged. */
interface Run {
  readonly key: string;
  readonly stretches: readonly Stretch[];
}

/** An eye needs this long to call a lamp dark, and to tell a dull glow from one dying away, ms. Ours, no source. */
const DARK_MS = 300;
const GLOW_MS = 1000;
const PROOF_GLOW = 4;
/** A hand needs this long to feel a strip, ms. Ours, no source. */
const FELT_MS = 100;
/** Places of the strip closer than this are one place: degrees along the arc, and of rotation. */
const SAME_ARC_DEG = 5;
const SAME_SHARE_OF_SLOT = 4;

export function contactsOf({ stretches, design }: Pick<Film, 'stretches' | 'design'>): Contacts {
  const lamp = lampContacts(stretches);
  return {
    meter: runsOf(stretches, meterKey).flatMap(meterOf),
    lamp: lamp.readings,
    unproved: lamp.unproved,
    strip: distinct(runsOf(stretches, stripKey).flatMap(stripOf), design.slots),
    tester: testerReadings(stretches),
    drop: dropsBetweenBars(stretches),
    looks: looksOf(stretches),
  };
}

function runsOf(stretches: readonly Stretch[], keyOf: (seen: Observation) => string | null): Run[] {
  const runs: { key: string; stretches: Stretch[] }[] = [];
  let last: string | null = null;
  for (const stretch of stretches) {
    const key = keyOf(stretch.seen);
    if (key !== null && key === last) runs[runs.length - 1]!.stretches.push(stretch);
    else if (key !== null) runs.push({ key, stretches: [stretch] });
    last = key;
  }
  return runs;
}

function meterBars({ leads }: Observation): readonly [number, number] | null {
  const [one, two] = [leads['ammeter.1'].touches, leads['ammeter.2'].touches];
  return one === null || two === null ? null : pairOf([one, two]);
}

function meterKey(seen: Observation): string | null {
  const bars = meterBars(seen);
  return bars === null ? null : `${bars} ${seen.rotationDeg}`;
}

/** The contact read at rest on the range that shows it best; on HIGH if it was read there. */
function meterOf({ stretches }: Run): MeterReading[] {
  const atRest = (selector: 'high' | 'low') =>
    stretches.filter(({ seen }) => excited(seen, selector) && (seen.needle.atRest || seen.needle.pegged));
  const high = atRest('high');
  const read = high.length > 0 ? high : atRest('low');
  const best = read.reduce<Stretch | null>((top, one) => (top === null || finer(one, top) ? one : top), null);
  if (best === null) return [];
  const { rotationDeg, rangeA, needle } = best.seen;
  return [
    {
      kind: 'meter',
      entry: stretches[0]!.since,
      bars: meterBars(best.seen)!,
      rotationDeg,
      excitation: high.length > 0 ? 'high' : 'low',
      rangeA,
      deflection: needle.deflection,
      pegged: needle.pegged,
      from: 'instrument',
    },
  ];
}

function finer({ seen: a }: Stretch, { seen: b }: Stretch): boolean {
  if (a.needle.pegged !== b.needle.pegged) return b.needle.pegged;
  return a.rangeA <= b.rangeA;
}

function lampPlaces({ leads }: Observation): readonly [Place, Place] | null {
  const [one, two] = [leads['lamp.1'].touches, leads['lamp.2'].touches];
  if (one === null || two === null || !onArmature(one) || !onArmature(two)) return null;
  return [one, two];
}

function onArmature(place: Place): boolean {
  return place === 'shaft' || place === 'core' || barOf(place) !== null;
}

function provesLamp(seen: Observation): boolean {
  const { leads, lamp } = seen;
  const together = leads['lamp.1'].touches === 'tip:lamp.2' || leads['lamp.2'].touches === 'tip:lamp.1';
  return together && excited(seen, 'low') && lamp.glow >= PROOF_GLOW;
}

/** Runs of a lamp contact, of its proof, and of the selector off LOW, in order. */
function lampKey(seen: Observation): string {
  if (!excited(seen, 'low')) return 'off';
  const places = lampPlaces(seen);
  if (places !== null) return `on ${places}`;
  return provesLamp(seen) ? 'proof' : 'between';
}

/** A dark result stands only with a proof before it and one after it, LOW all the while; a lit lamp proves itself. */
function lampContacts(stretches: readonly Stretch[]) {
  const readings: LampReading[] = [];
  const unproved: number[] = [];
  let proved = false;
  let waiting: LampReading[] = [];
  const drop = () => {
    unproved.push(...waiting.map(({ entry }) => entry));
    waiting = [];
  };
  for (const run of runsOf(stretches, lampKey)) {
    if (run.key === 'off') {
      drop();
      proved = false;
    } else if (run.key === 'proof') {
      readings.push(...waiting);
      waiting = [];
      proved = true;
    } else if (run.key !== 'between') {
      const reading = lampOf(run);
      if (reading === null) continue;
      if (reading.shows !== 'dark') readings.push(reading);
      else if (proved) waiting.push(reading);
      else unproved.push(reading.entry);
    }
  }
  drop();
  return { readings: readings.sort((a, b) => a.entry - b.entry), unproved };
}

function lampOf({ stretches }: Run): LampReading | null {
  const last = stretches[stretches.length - 1]!;
  const ms = stretches.reduce((sum, stretch) => sum + lasted(stretch), 0);
  const shows = lampShows(last.seen.lamp.glow);
  const seen = ms >= (shows === 'dark' ? DARK_MS : GLOW_MS) || shows === 'lit';
  if (!seen) return null;
  const { since: entry } = stretches[0]!;
  return { kind: 'lamp', entry, places: lampPlaces(last.seen)!, shows, from: 'instrument' };
}

function stripKey(seen: Observation): string | null {
  const { at, angleDeg, heightMm } = seen.strip;
  return at === 'core' ? `${angleDeg} ${heightMm} ${seen.rotationDeg} ${seen.selector} ${seen.supply}` : null;
}

function stripOf({ stretches }: Run): StripReading[] {
  const { seen } = stretches[stretches.length - 1]!;
  const ms = stretches.reduce((sum, stretch) => sum + lasted(stretch), 0);
  const { angleDeg, heightMm, pull } = seen.strip;
  const live = excited(seen, 'high') || excited(seen, 'low');
  if (!live || ms < FELT_MS || angleDeg === null || heightMm === null) return [];
  return [
    {
      kind: 'strip',
      entry: stretches[0]!.since,
      angleDeg,
      heightMm,
      rotationDeg: seen.rotationDeg,
      excitation: excited(seen, 'high') ? 'high' : 'low',
      pull,
      from: 'instrument',
    },
  ];
}

/** A strip held where it was before tells nothing new; of places that are hardly apart the strongest pull stands. */
function distinct(readings: readonly StripReading[], slots: number): StripReading[] {
  const share = 360 / slots / SAME_SHARE_OF_SLOT;
  const kept = new Map<string, StripReading>();
  for (const reading of readings) {
    const arc = Math.round((reading.angleDeg - STRIP_ARC_DEG.from) / SAME_ARC_DEG);
    const turn = Math.round(reading.rotationDeg / share) % (slots * SAME_SHARE_OF_SLOT);
    const key = `${arc} ${turn} ${Math.round(10 * reading.heightMm)} ${reading.excitation}`;
    const before = kept.get(key);
    if (before === undefined || reading.pull > before.pull) kept.set(key, reading);
  }
  return inOrder(kept);
}

/** Between the same clips at the same voltage the tester shows the same again. */
function testerReadings(stretches: readonly Stretch[]): MegohmReading[] {
  const kept = new Map<string, MegohmReading>();
  for (const { part, settled, entry, places, volt, megohms, over } of megohmReadings(stretches)) {
    if (part !== 'armature' || !settled) continue;
    const shown = over ? ('over' as const) : megohms;
    const reading: MegohmReading = {
      kind: 'megohm',
      entry,
      places,
      volt,
      megohms: shown,
      from: 'instrument',
    };
    keep(kept, `${[...places].sort()} ${volt}`, reading);
  }
  return inOrder(kept);
}

/** One for each time the tips were put on: whoever doubts a figure reads it again. */
function dropsBetweenBars(stretches: readonly Stretch[]): DropReading[] {
  return runsOf(stretches, dropKey).flatMap(({ stretches: held }): DropReading[] => {
    const [read] = dropReadings(held);
    const bars = read === undefined ? null : pairOf(read.places);
    const feed = read === undefined ? null : pairOf(read.feed);
    if (read === undefined || bars === null || feed === null) return [];
    const { entry, millivolts } = read;
    return [{ kind: 'drop', entry, feed, bars, millivolts, from: 'instrument' }];
  });
}

function dropKey({ leads, drop: { feed, millivolts } }: Observation): string | null {
  if (feed === null || millivolts === null) return null;
  return `${leads['drop.1'].touches} ${leads['drop.2'].touches} ${feed}`;
}

/** Two different bars, or null. */
function pairOf([one, other]: readonly [Place, Place]): readonly [number, number] | null {
  const [a, b] = [barOf(one), barOf(other)];
  return a === null || b === null || a === b ? null : [a, b];
}

function keep<T>(kept: Map<string, T>, key: string, reading: T): void {
  if (!kept.has(key)) kept.set(key, reading);
}

function inOrder<T extends { readonly entry: number }>(kept: ReadonlyMap<string, T>): T[] {
  return [...kept.values()].sort((a, b) => a.entry - b.entry);
}

export function looksOf(stretches: readonly Stretch[]): LookReading[] {
  const looks = new Map<string, LookReading>();
  for (const { seen, since } of stretches)
    if (seen.look !== null && !looks.has(seen.look.place))
      looks.set(seen.look.place, { kind: 'look', entry: since, ...seen.look });
  return [...looks.values()];
}
