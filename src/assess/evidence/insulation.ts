import { barOf, type Place } from '../../bench/places.ts';
import type { Mains } from '../../engine/drive.ts';
import { benchLamp, glow, steadyFilament } from '../../engine/instruments/lamp.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { type InsulationKind, type Priors, WEAK_OHM } from './priors.ts';
import { type LampReading, type LampShows, lampShows } from './reading.ts';

/** One state the insulation to the core may be in. Number 0 is insulation without fault. */
export interface InsulationSuspect {
  readonly kind: InsulationKind | 'sound';
  /** Bar that is grounded, or null: a lamp does not tell which coil. */
  readonly bar: number | null;
  /** What the lamp shows from the core to any bar of the winding. */
  readonly shows: LampShows;
  readonly odds: number;
}

/** Insulation that has broken down, or a bar gone to ground, passes all the current a lamp can take. */
const HARD_GROUND_OHM = 10;

export function listInsulation(design: ArmatureDesign, mains: Mains, priors: Priors): InsulationSuspect[] {
  const { groundedBar, groundedCoil, weak, weakBreaksDown } = priors.insulation;
  const lit = lampOver(HARD_GROUND_OHM, mains);
  return [
    { kind: 'sound', bar: null, shows: 'dark', odds: 1 },
    ...Array.from({ length: design.bars }, (_, bar) => ({
      kind: 'groundedBar' as const,
      bar,
      shows: lit,
      odds: groundedBar / design.bars,
    })),
    { kind: 'groundedCoil', bar: null, shows: lit, odds: groundedCoil },
    ...WEAK_OHM.map(({ ohm, share }) => ({
      kind: 'weak' as const,
      bar: null,
      shows: lampOver(ohm as number, mains),
      odds: weak * share,
    })),
    { kind: 'weakBreaksDown', bar: null, shows: lit, odds: weakBreaksDown },
  ];
}

/** What the lamp shows over a resistance. */
export function lampOver(ohm: number, mains: Mains): LampShows {
  const circuit = { volt: mains.volt, path: { re: ohm, im: 0 } };
  return lampShows(glow(steadyFilament(benchLamp(mains.volt), circuit)));
}

/** The lamp's contact seen as a question: core to a bar, bar to bar, or metal that is one piece anyway. */
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

/**
 * Weighs lamp results, as logarithms. What the lamp shows depends on the insulation, and on the winding only where a
 * bar is cut off from it.
 */
export class LampScale {
  /** By insulation suspect. */
  readonly log: Float64Array;
  /** What changes when a bar is cut off from the winding: by bar, then by insulation suspect. */
  readonly cutOff: readonly Float64Array[];
  private readonly suspects: readonly InsulationSuspect[];

  constructor(suspects: readonly InsulationSuspect[], bars: number) {
    this.suspects = suspects;
    this.log = new Float64Array(suspects.length);
    this.cutOff = Array.from({ length: bars }, () => new Float64Array(suspects.length));
  }

  add({ places, shows }: LampReading): void {
    const question = lampQuestion(places);
    if (question.asks === 'nothing') return;
    const touched = question.asks === 'ground' ? [question.bar] : question.bars;
    this.suspects.forEach((suspect, i) => {
      const usual = question.asks === 'ground' ? suspect.shows : 'lit';
      const log = Math.log(SEEN_AS[usual][shows]);
      this.log[i]! += log;
      for (const bar of touched) {
        // A bar that is itself grounded lights although nothing joins it to the winding.
        const lights = question.asks === 'ground' && suspect.bar === bar;
        const alone = lights ? suspect.shows : 'dark';
        this.cutOff[bar]![i]! += Math.log(SEEN_AS[alone][shows]) - log;
      }
    });
  }
}

/** The state that comes nearest to an insulation fault; null for any other fault. */
export function nearestInsulation(
  suspects: readonly InsulationSuspect[],
  mains: Mains,
  fault: ArmatureFault,
): number | null {
  const first = (kind: InsulationSuspect['kind'], fits = (_: InsulationSuspect) => true) =>
    suspects.findIndex((suspect) => suspect.kind === kind && fits(suspect));
  switch (fault.kind) {
    case 'groundedBar':
    case 'groundedCoil': {
      if (lampOver(fault.ohm, mains) !== 'lit') return weakAt(suspects, mains, fault.ohm);
      return fault.kind === 'groundedBar'
        ? first('groundedBar', ({ bar }) => bar === fault.bar)
        : first('groundedCoil');
    }
    case 'weakInsulation': {
      const breaks = fault.breakdownV !== null && fault.breakdownV < Math.SQRT2 * mains.volt;
      return breaks ? first('weakBreaksDown') : weakAt(suspects, mains, fault.ohm);
    }
    default:
      return null;
  }
}

/** Weak insulation that shows on the lamp what a leak of some ohms does. */
function weakAt(suspects: readonly InsulationSuspect[], mains: Mains, ohm: number): number {
  const shows = lampOver(ohm, mains);
  const same = suspects.findIndex((suspect) => suspect.kind === 'weak' && suspect.shows === shows);
  return same >= 0 ? same : suspects.findIndex(({ kind }) => kind === 'weak');
}
