import type { BrushIndex, GaugeKind, PartKind } from '../bench/action.ts';
import { type Place, partOf } from '../bench/places.ts';
import { acrossPart } from '../bench/state.ts';
import type { TestVolt } from '../engine/instruments/insulationTester.ts';
import { lasted, type Stretch } from './film.ts';
import { runsOf } from './runs.ts';

/** What was read on the tools of the rail: insulation tester, millivoltmeter, gauges. */

/**
 * The display follows the part with a lag of some tenths of a second; held for this long it shows what it will, ms.
 * Ours, no source.
 */
const TESTER_SETTLED_MS = 2000;
/** An eye reads figures that stand still within this time, ms. Ours, no source. */
const READ_MS = 200;

/** The insulation tester's button held down with both its leads on one part. */
export interface MegohmReading {
  /** Entry that brought it about. */
  readonly entry: number;
  readonly part: PartKind;
  readonly places: readonly [Place, Place];
  readonly volt: TestVolt;
  readonly megohms: number;
  readonly over: boolean;
  /** Held down until the display stood still. */
  readonly settled: boolean;
}

/** The millivoltmeter across two pieces of a part that is being fed. */
export interface DropReading {
  readonly entry: number;
  readonly part: PartKind;
  readonly places: readonly [Place, Place];
  readonly feed: readonly [Place, Place];
  readonly millivolts: number;
  readonly over: boolean;
}

export interface GaugeReading {
  readonly entry: number;
  readonly gauge: GaugeKind;
  readonly brush: BrushIndex | null;
  readonly mm: number;
}

export function megohmReadings(stretches: readonly Stretch[]): MegohmReading[] {
  return runsOf(stretches, megohmKey).flatMap((run) => {
    const { seen } = run.at(-1)!;
    const [one, two] = [seen.leads['tester.1'].touches, seen.leads['tester.2'].touches];
    const part = acrossPart(seen.leads, 'tester');
    const { megohms, over, volt } = seen.tester;
    if (part === null || one === null || two === null || megohms === null) return [];
    const heldMs = run.reduce((sum, stretch) => sum + lasted(stretch), 0);
    const settled = heldMs >= TESTER_SETTLED_MS;
    return [{ entry: run[0]!.since, part, places: [one, two] as const, volt, megohms, over, settled }];
  });
}

function megohmKey({ seen: { tester, leads } }: Stretch): string | null {
  if (!tester.pressed || acrossPart(leads, 'tester') === null) return null;
  return `${leads['tester.1'].touches} ${leads['tester.2'].touches} ${tester.volt}`;
}

export function dropReadings(stretches: readonly Stretch[]): DropReading[] {
  return stretches.flatMap((stretch) => {
    const { leads, drop } = stretch.seen;
    const [one, two] = [leads['drop.1'].touches, leads['drop.2'].touches];
    const part = acrossPart(leads, 'drop');
    const { feed, millivolts, over } = drop;
    if (part === null || feed === null || millivolts === null || one === null || two === null) return [];
    if (partOf(feed[0]) !== part || lasted(stretch) < READ_MS) return [];
    return [{ entry: stretch.since, part, places: [one, two] as const, feed, millivolts, over }];
  });
}

/** A gauge stays at the part until something else is done with the hands: each time it is put there is one reading. */
export function gaugeReadings(stretches: readonly Stretch[]): GaugeReading[] {
  const key = ({ seen: { gauge } }: Stretch) => (gauge === null ? null : `${gauge.gauge} ${gauge.brush}`);
  return runsOf(stretches, key).map((run) => ({ entry: run[0]!.since, ...run.at(-1)!.seen.gauge! }));
}
