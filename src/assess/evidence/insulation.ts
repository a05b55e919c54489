import type { TestKind } from '../../bench/paper.ts';
import { barOf, type Place } from '../../bench/places.ts';
import type { Mains } from '../../engine/drive.ts';
import { SOUND_INSULATION_OHM } from '../../engine/instruments/armatureDc.ts';
import { seeMegohms, type TestVolt } from '../../engine/instruments/insulationTester.ts';
import { benchLamp, glow, steadyFilament } from '../../engine/instruments/lamp.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { BREAKDOWN_V, type InsulationKind, type Priors, WEAK_OHM } from './priors.ts';
import { type LampReading, type LampShows, lampShows, type MegohmReading } from './reading.ts';
import { type Found, isPoor, type Leak, overLeak, testerLikelihood } from './tester.ts';

/** One state the insulation to the core may be in. Number 0 is insulation without fault. */
export interface InsulationSuspect {
  readonly kind: InsulationKind | 'sound';
  /** Bar that is grounded, or null: a lamp does not tell which coil. */
  readonly bar: number | null;
  /** What the lamp shows from the core to any bar of the winding. */
  readonly shows: LampShows;
  /** Null: none beside the sound insulation's own. */
  readonly leak: Leak | null;
  /** Whether the insulation tester reads less than the card allows. */
  readonly poor: boolean;
  readonly odds: number;
}

/** Insulation that has broken down, or a bar gone to ground, passes all the current a lamp can take. */
const HARD_GROUND_OHM = 10;
const HARD_GROUND: Leak = { leastOhm: HARD_GROUND_OHM, mostOhm: HARD_GROUND_OHM, breakdownV: null };
/** Step between leaks that are told apart, and between those that break down, as a factor; without a tester coarser. */
const STEPS = { tester: { leak: 1.3, breaking: 4 }, lamp: { leak: 2, breaking: 500 } } as const;

/** @param leastMohm least reading of the insulation tester that the card allows, megohms; null: it allows none */
export function listInsulation(
  design: ArmatureDesign,
  mains: Mains,
  priors: Priors,
  leastMohm: number | null,
): InsulationSuspect[] {
  const steps = STEPS[leastMohm === null ? 'lamp' : 'tester'];
  const limit = leastMohm ?? 0;
  const { groundedBar, groundedCoil, weak, weakBreaksDown } = priors.insulation;
  const suspect = (
    kind: InsulationSuspect['kind'],
    leak: Leak | null,
    odds: number,
    bar: number | null = null,
  ) => {
    const shows = leak === null ? 'dark' : lampOver(underLamp(leak, mains), mains);
    return { kind, bar, shows, leak, poor: isPoor(leak, limit), odds };
  };
  const breaking = BREAKDOWN_V.flatMap((breakdownV) => leaks(limit, steps.breaking, breakdownV));
  return [
    suspect('sound', null, 1),
    ...Array.from({ length: design.bars }, (_, bar) =>
      suspect('groundedBar', HARD_GROUND, groundedBar / design.bars, bar),
    ),
    suspect('groundedCoil', HARD_GROUND, groundedCoil),
    ...leaks(limit, steps.leak, null).map(({ share, ...leak }) => suspect('weak', leak, weak * share)),
    ...breaking.map(({ share, ...leak }) =>
      suspect('weakBreaksDown', leak, (weakBreaksDown * share) / BREAKDOWN_V.length),
    ),
  ];
}

/** Leaks side by side that together make up all there may be; none lies on both sides of the card's limit. */
function leaks(leastMohm: number, factor: number, breakdownV: number | null): (Leak & { share: number })[] {
  const least = WEAK_OHM.least;
  // A card that asks for more may send away what others would pass.
  const most = Math.max(WEAK_OHM.most, 5e6 * leastMohm);
  const steps = Math.ceil(Math.log(most / least) / Math.log(factor));
  const evenly = Array.from({ length: steps + 1 }, (_, k) => least * (most / least) ** (k / steps));
  const limit = limitOhm(leastMohm);
  const edges = limit > least && limit < most ? [...evenly, limit].sort((a, b) => a - b) : evenly;
  return edges.slice(1).map((mostOhm, k) => ({
    leastOhm: edges[k]!,
    mostOhm,
    breakdownV,
    share: Math.log(mostOhm / edges[k]!) / Math.log(WEAK_OHM.most / WEAK_OHM.least),
  }));
}

/** Leak that with the sound insulation beside it reads just what the card allows, ohm. */
function limitOhm(leastMohm: number): number {
  const limit = 1e6 * leastMohm;
  return limit < SOUND_INSULATION_OHM ? 1 / (1 / limit - 1 / SOUND_INSULATION_OHM) : Number.POSITIVE_INFINITY;
}

/** Resistance a leak has under the lamp, ohm. */
function underLamp({ leastOhm, mostOhm, breakdownV }: Leak, { volt }: Mains): number {
  return breakdownV !== null && breakdownV < Math.SQRT2 * volt
    ? HARD_GROUND_OHM
    : Math.sqrt(leastOhm * mostOhm);
}

/** Whether the tests a job allows can show it. */
export function insulationShows({ shows, poor }: InsulationSuspect, tests: readonly TestKind[]): boolean {
  return (tests.includes('ground') && shows !== 'dark') || (tests.includes('megohm') && poor);
}

/** What the lamp shows over a resistance. */
export function lampOver(ohm: number, mains: Mains): LampShows {
  const circuit = { volt: mains.volt, path: { re: ohm, im: 0 } };
  return lampShows(glow(steadyFilament(benchLamp(mains.volt), circuit)));
}

/** Two tips on the part seen as a question: core to a bar, bar to bar, or metal that is one piece anyway. */
export type LampQuestion =
  | { readonly asks: 'ground'; readonly bar: number }
  | { readonly asks: 'through'; readonly bars: readonly [number, number] }
  | { readonly asks: 'nothing' };

export function lampQuestion([one, other]: readonly [Place, Place]): LampQuestion {
  const bars = [barOf(one), barOf(other)].filter((bar) => bar !== null);
  const iron = [one, other].filter((place) => place === 'shaft' || place === 'core').length;
  if (bars.length === 1 && iron === 1) return { asks: 'ground', bar: bars[0]! };
  if (bars.length === 2 && bars[0] !== bars[1]) return { asks: 'through', bars: [bars[0]!, bars[1]!] };
  return { asks: 'nothing' };
}

/** Chance of seeing one thing when the lamp should show another: eyes and wiped probes err now and then. Ours. */
export const SEEN_AS: Readonly<Record<LampShows, Readonly<Record<LampShows, number>>>> = {
  dark: { dark: 0.99, dim: 0.008, lit: 0.002 },
  dim: { dark: 0.03, dim: 0.94, lit: 0.03 },
  lit: { dark: 0.005, dim: 0.015, lit: 0.98 },
};

/** What lies between two clips on core or bars: whether a bar they are on is cut off from the winding, and which. */
interface Way {
  readonly asks: 'ground' | 'through';
  readonly cutOff: number | null;
}

/**
 * Weighs lamp results and figures of the insulation tester, as logarithms. What they show depends on the insulation,
 * and on the winding only where a bar is cut off from it.
 */
export class InsulationScale {
  /** By insulation suspect. */
  readonly log: Float64Array;
  /** What changes when a bar is cut off from the winding: by bar, then by insulation suspect. */
  readonly cutOff: readonly Float64Array[];
  private readonly suspects: readonly InsulationSuspect[];
  private readonly bars: number;

  constructor(suspects: readonly InsulationSuspect[], bars: number) {
    this.suspects = suspects;
    this.bars = bars;
    this.log = new Float64Array(suspects.length);
    this.cutOff = Array.from({ length: bars }, () => new Float64Array(suspects.length));
  }

  add(reading: LampReading | MegohmReading): void {
    const question = lampQuestion(reading.places);
    if (question.asks === 'nothing') return;
    const { asks } = question;
    const touched = question.asks === 'ground' ? [question.bar] : question.bars;
    this.suspects.forEach((suspect, i) => {
      const log = Math.log(this.chance(reading, suspect, { asks, cutOff: null }));
      this.log[i]! += log;
      for (const bar of touched)
        this.cutOff[bar]![i]! += Math.log(this.chance(reading, suspect, { asks, cutOff: bar })) - log;
    });
  }

  private chance(reading: LampReading | MegohmReading, suspect: InsulationSuspect, way: Way): number {
    if (reading.kind === 'lamp') return SEEN_AS[lampOn(suspect, way)][reading.shows];
    return testerLikelihood(reading, this.found(suspect, way, reading.volt));
  }

  /** A bar that is cut off has its own small share of the sound insulation, and its own ground. */
  private found({ leak, bar }: InsulationSuspect, { asks, cutOff }: Way, volt: TestVolt): Found | null {
    if (cutOff === null) return asks === 'ground' ? overLeak(leak, volt) : NO_OHM;
    const own = bar === cutOff;
    if (asks === 'ground') return own ? overLeak(leak, volt) : apart(this.bars);
    return own ? overLeak(null, volt) : apart(this.bars);
  }
}

const NO_OHM: Found = { leastOhm: 0, mostOhm: 0 };

/** One bar's share of the sound insulation; beyond the scale where there are many bars. */
function apart(bars: number): Found | null {
  const ohm = SOUND_INSULATION_OHM * bars;
  return seeMegohms(ohm).over ? null : { leastOhm: ohm, mostOhm: ohm };
}

/** A bar that is itself grounded lights although nothing joins it to the winding. */
function lampOn({ shows, bar }: InsulationSuspect, { asks, cutOff }: Way): LampShows {
  if (cutOff === null) return asks === 'ground' ? shows : 'lit';
  return asks === 'ground' && bar === cutOff ? shows : 'dark';
}

/** The state that comes nearest to an insulation fault; null for any other fault. */
export function nearestInsulation(
  suspects: readonly InsulationSuspect[],
  mains: Mains,
  fault: ArmatureFault,
): number | null {
  switch (fault.kind) {
    case 'groundedBar':
    case 'groundedCoil': {
      if (lampOver(fault.ohm, mains) !== 'lit') return nearestLeak(suspects, mains, fault.ohm, null);
      const bar = fault.kind === 'groundedBar' ? fault.bar : null;
      return suspects.findIndex((suspect) => suspect.kind === fault.kind && suspect.bar === bar);
    }
    case 'weakInsulation':
      return nearestLeak(suspects, mains, fault.ohm, fault.breakdownV);
    default:
      return null;
  }
}

/** Of the leaks that show the same on the lamp the nearest, by when they break down first, then by their resistance. */
function nearestLeak(
  suspects: readonly InsulationSuspect[],
  mains: Mains,
  ohm: number,
  breakdownV: number | null,
): number {
  const shows = lampOver(underLamp({ leastOhm: ohm, mostOhm: ohm, breakdownV }, mains), mains);
  const away = suspects.map(({ kind, leak, shows: theirs }) => {
    if (leak === null || (kind !== 'weak' && kind !== 'weakBreaksDown')) return Number.POSITIVE_INFINITY;
    const other = theirs === shows ? 0 : 1e6;
    return other + 1e3 * voltsApart(leak.breakdownV, breakdownV) + ohmsApart(leak, ohm);
  });
  return away.indexOf(Math.min(...away));
}

const NEVER_V = 1e4;
function voltsApart(one: number | null, other: number | null): number {
  return Math.abs(Math.log((one ?? NEVER_V) / (other ?? NEVER_V)));
}

/** Nought within a leak's own range. */
function ohmsApart({ leastOhm, mostOhm }: Leak, ohm: number): number {
  return Math.max(0, Math.log(leastOhm / ohm), Math.log(ohm / mostOhm));
}
