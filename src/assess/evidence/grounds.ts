import { type AlterableWinding, AlteredScale, type Standing } from './altered.ts';
import type { Dictionary } from './dictionary.ts';
import type { Priors, Severity } from './priors.ts';
import type { DropReading, MeterReading } from './reading.ts';
import type { Against, StripScale } from './strips.ts';
import { type Alteration, NOTHING } from './thevenin.ts';

/**
 * Two grounds: the core joins two bars and shorts what lies between them, which to ammeter and strip is much like coils
 * touching. A ground inside a coil is taken at the nearer bar.
 */

/** Resistance of both grounds together, ohm: hard ones, each listed one standing for all half-way to the next. */
const OHMS: readonly Severity[] = [0.04, 0.8].map((ohm) => ({ ohm, share: 1 / 2 }));

/** Every two bars of the part joined through the core, weighed against the meter readings. */
export class Grounds {
  readonly scale: AlteredScale;
  /** Logarithm of the odds of each, given that there is a ground at all and before rarity beside other things. */
  readonly oddsLog: number;
  private readonly dictionary: Dictionary;
  private readonly feltBy = new Map<number, { better: number[]; looseBetter: number[] }>();
  private readonly bars: readonly (readonly [number, number])[];

  constructor(dictionary: Dictionary, { insulation, alike }: Priors) {
    const { bars } = dictionary.design;
    this.dictionary = dictionary;
    this.bars = Array.from({ length: bars }, (_, a) =>
      Array.from({ length: bars - 1 - a }, (_, k) => [a, a + 1 + k] as const),
    ).flat();
    const plain = { winding: dictionary.winding, network: null, alteration: NOTHING, beside: [] };
    const runs = this.bars.map((_, k) => ({ severities: OHMS, first: k * OHMS.length }));
    const altered = this.bars.flatMap((_, k) => OHMS.map((_, s) => this.alteration(k, s)));
    this.scale = new AlteredScale(dictionary, plain, altered, runs);
    // One of two grounds is that of the insulation already weighed; which of them does not matter.
    const second = (insulation.groundedBar + insulation.groundedCoil) / 2;
    this.oddsLog = Math.log((alike * second) / altered.length);
  }

  weigh(meters: readonly MeterReading[], drops: readonly DropReading[]): void {
    this.scale.weigh(meters, drops);
  }

  get count(): number {
    return this.bars.length * OHMS.length;
  }

  /** One of them as what stands in any case. */
  standing(nth: number): AlterableWinding & Standing {
    const [k, severity] = [Math.floor(nth / OHMS.length), nth % OHMS.length];
    const beside = [severity - 1, severity + 1].filter((s) => s >= 0 && s < OHMS.length);
    return {
      winding: this.dictionary.winding,
      network: null,
      alteration: this.alteration(k, severity),
      beside: [beside.map((s) => this.alteration(k, s))],
    };
  }

  /** What the strip says of one of them, worked out for those that are asked for. */
  felt(nth: number, strips: StripScale): Against {
    const known = this.feltBy.get(nth) ?? { better: [], looseBetter: [] };
    this.feltBy.set(nth, known);
    const [k, severity] = [Math.floor(nth / OHMS.length), nth % OHMS.length];
    const fresh = strips.ofJoined(this.bars[k]!, OHMS[severity]!.ohm as number, known.better.length);
    for (const { better, loose } of fresh) {
      known.better.push(better);
      known.looseBetter.push(loose);
    }
    return known;
  }

  private alteration(k: number, severity: number): Alteration {
    const [a, b] = this.bars[k]!;
    return { ports: [{ a, b, outside: true }], inverse: [OHMS[severity]!.ohm as number], inFront: [] };
  }
}
