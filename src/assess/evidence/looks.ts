import type { Second } from './besides.ts';
import { insulationSigns, type Signs, signWeight, surfaceSigns, windingSigns } from './clues.ts';
import type { EvidenceModel } from './model.ts';
import { SURFACES } from './noise.ts';
import type { OtherLooks } from './posterior.ts';
import type { LookReading } from './reading.ts';
import type { SuspectPlace } from './suspects.ts';

/** Weighs what the lens showed, as logarithms, one place after another. */
export class LookScale {
  private readonly model: EvidenceModel;
  private readonly places: readonly (SuspectPlace | null)[];
  private readonly seconds: readonly Second[];
  private readonly looks = new Map<string, LookReading>();
  /** By suspect, and by second fault. */
  private readonly single: Float64Array;
  private readonly second = new Map<Second, number>();

  constructor(model: EvidenceModel, places: readonly (SuspectPlace | null)[], seconds: readonly Second[]) {
    this.model = model;
    this.places = places;
    this.seconds = seconds;
    this.single = new Float64Array(places.length);
  }

  /** Looking again shows the same. */
  add(look: LookReading): void {
    if (this.looks.has(look.place)) return;
    this.looks.set(look.place, look);
    this.places.forEach((at, k) => {
      if (at !== null) this.single[k]! += this.weight(at, look);
    });
    for (const second of this.seconds)
      this.second.set(second, this.ofSecond(second) + this.weight(second, look));
  }

  ofSuspect(suspect: number): number {
    return this.single[suspect]!;
  }

  ofSecond(second: Second): number {
    return this.second.get(second) ?? 0;
  }

  others(): OtherLooks {
    const looks = [...this.looks.values()];
    const weigh = (signs: (look: LookReading) => Signs | null) =>
      looks.reduce((sum, look) => sum + signWeight(signs(look), look), 0);
    return {
      insulation: Float64Array.from(this.model.insulation, (suspect) =>
        weigh(({ place }) => insulationSigns(suspect, place)),
      ),
      surface: Float64Array.from(SURFACES, (surface) => weigh(({ place }) => surfaceSigns(surface, place))),
    };
  }

  private weight(at: SuspectPlace, look: LookReading): number {
    return signWeight(windingSigns(this.model.design, at.block, at.place, at.severity, look.place), look);
  }
}
