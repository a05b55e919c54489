import type { PartKind } from '../../bench/action.ts';
import type { Wear } from '../../engine/parts/wear.ts';
import type { BenchFault } from '../hidden/benchFault.ts';
import type { Limits } from '../public/job.ts';
import {
  BENCH_FAMILIES,
  type BenchFamily,
  type Chance,
  pick,
  WEAR_FAMILIES,
  type WearFamily,
} from './wish.ts';

/** What is the matter with the bench itself, and what rubbing has left of commutator and brushes. */

const LAMP_LEADS = ['lamp.1', 'lamp.2'] as const;
const METER_LEADS = ['ammeter.1', 'ammeter.2'] as const;

/** Bench faults that work on these parts comes upon: only an armature is read with the ammeter. */
export function benchFamilies(about: readonly PartKind[]): readonly BenchFamily[] {
  const meter = about.includes('armature');
  return BENCH_FAMILIES.filter((family) => meter || (family !== 'ammeterLead' && family !== 'zero'));
}

export function benchFaultOf(family: BenchFamily, chance: Chance): BenchFault {
  switch (family) {
    case 'lamp':
      return { kind: 'blownLamp' };
    case 'lampLead':
      return { kind: 'brokenLead', lead: pick(chance, LAMP_LEADS) };
    case 'handle':
      return { kind: 'crackedHandle', lead: pick(chance, LAMP_LEADS) };
    case 'ammeterLead':
      return { kind: 'brokenLead', lead: pick(chance, METER_LEADS) };
    case 'zero':
      return { kind: 'ammeterZero', offset: pick(chance, [0.02, 0.03, 0.05]) };
  }
}

/** Wear that these parts can show. */
export function wearFamilies(about: readonly PartKind[]): readonly WearFamily[] {
  const brushes = about.includes('fieldFrame') || about.includes('brushPlate');
  return WEAR_FAMILIES.filter((family) => (family === 'shortBrush' ? brushes : about.includes('armature')));
}

/** Length of a brush with plenty left, mm, and how far a gauge reads past a limit that is passed, mm. */
const GOOD_BRUSH_MM = [10, 11, 12, 13] as const;
const PAST_MM = [0.5, 1, 1.5] as const;

/** Wear just past one of the card's limits. */
export function wearOf(
  family: WearFamily,
  chance: Chance,
  about: readonly PartKind[],
  limits: Limits,
): Partial<Wear> {
  const rounded = (mm: number) => Number(mm.toFixed(2));
  switch (family) {
    case 'shallow':
      return { undercutMm: rounded(limits.undercutMm * pick(chance, [0.25, 0.5])) };
    case 'runsOut':
      return { runOutMm: rounded(limits.runOutMm + pick(chance, [0.03, 0.06, 0.1])) };
    case 'thin':
      return { commutatorDiameterMm: rounded(limits.commutatorDiameterMm - pick(chance, PAST_MM)) };
    case 'shortBrush':
      return { brushLengthsMm: brushLengths(chance, about, limits.brushLengthMm) };
  }
}

/** One brush of the parts in question is short, the others are good. */
function brushLengths(chance: Chance, about: readonly PartKind[], limitMm: number): Wear['brushLengthsMm'] {
  const own = [
    ...(about.includes('fieldFrame') ? [0, 1] : []),
    ...(about.includes('brushPlate') ? [2, 3] : []),
  ];
  const short = pick(chance, own);
  const shortMm = Math.floor(2 * (limitMm - pick(chance, PAST_MM))) / 2;
  const length = (brush: number) => (brush === short ? shortMm : pick(chance, GOOD_BRUSH_MM));
  return [length(0), length(1), length(2), length(3)];
}
