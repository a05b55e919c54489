import { type Condition, firstCondition } from '../../attempt/condition.ts';
import { seeGauge } from '../../attempt/gauges.ts';
import { BRUSHES, type PartKind } from '../../bench/action.ts';
import type { Disposition, TestKind } from '../../bench/paper.ts';
import { partOfBrush } from '../../bench/touched.ts';
import { type Wear, wornBy } from '../../engine/parts/wear.ts';
import type { Limits } from '../../scenario/public/job.ts';
import { limitsOf } from '../../scenario/public/limits.ts';
import type { Credit, Expected } from './expected.ts';
import type { PartAt, TrueFinding } from './finding.ts';
import { NOWHERE } from './place.ts';

/** Wear beyond the card's limits, as the gauges show it. */
export interface Worn {
  readonly kind: 'worn';
  readonly what: readonly WornThing[];
}
type WornThing = 'diameter' | 'runOut' | 'undercut' | 'brushLength';

/** What an eye reads off the gauges as beyond the limit; a reading that stands on it is not. */
function wornThings(part: PartKind, wear: Wear, limits: Limits): WornThing[] {
  const read = (gauge: WornThing, brush: (typeof BRUSHES)[number] | null = null) =>
    seeGauge({ gauge, brush }, wear).mm;
  if (part !== 'armature') {
    const short = BRUSHES.filter((brush) => partOfBrush(brush) === part).some(
      (brush) => read('brushLength', brush) < limits.brushLengthMm,
    );
    return short ? ['brushLength'] : [];
  }
  const beyond: Readonly<Partial<Record<WornThing, boolean>>> = {
    diameter: read('diameter') < limits.commutatorDiameterMm,
    runOut: read('runOut') > limits.runOutMm,
    undercut: read('undercut') < limits.undercutMm,
  };
  return (['diameter', 'runOut', 'undercut'] as const).filter((what) => beyond[what] === true);
}

/** Nothing more can be turned off: the part is scrap. */
const SCRAP: Expected = { conditions: { worn: 1 }, dispositions: { replace: 1 }, weight: 4 };

/**
 * Mica is cut down and a commutator trued at the bench; where truing would take it below the limit it is scrap, which
 * only someone who reckons before they turn can know. Brushes are replaced, by solder where they hang on the coils.
 */
function expectedOf(what: readonly WornThing[], wear: Wear, limits: Limits): Expected {
  if (what.includes('diameter')) return SCRAP;
  if (what.includes('brushLength')) return worn({ replace: 1, resolder: 0.5 }, 2);
  const trued = wornBy(wear, 'skimAndPolish').commutatorDiameterMm;
  const tooThin = what.includes('runOut') && trued < limits.commutatorDiameterMm;
  return tooThin ? worn({ replace: 1, cleanAndRetest: 0.5 }, 4) : worn({ cleanAndRetest: 1, winder: 0.5 }, 1);
}

function worn(dispositions: Credit<Disposition>, weight: number): Expected {
  return { conditions: { worn: 1 }, dispositions, weight };
}

/** Wear the part came with, cured or not, and wear that work at this bench has brought about. */
export function wornTruth(part: PartKind, { scenario, design, condition }: PartAt): TrueFinding<Worn>[] {
  const limits = limitsOf(scenario.public, design);
  const first = firstCondition(scenario.hidden, design.commutatorRadius).wear;
  const now = wornThings(part, condition.wear, limits);
  const before = wornThings(part, first, limits);
  const what = now.length > 0 ? now : before;
  if (what.length === 0) return [];
  const expected = expectedOf(what, now.length > 0 ? condition.wear : first, limits);
  const toldBy = telling(part, condition, scenario.public.tests);
  return [{ fault: { kind: 'worn', what }, expected, place: NOWHERE, toldBy, cured: now.length === 0 }];
}

/** Whoever has made scrap of a part knows it, gauges on the card or not. */
function telling(part: PartKind, { scrapped }: Condition, tests: readonly TestKind[]): TestKind[] {
  return tests.includes('gauges') || scrapped.includes(part) ? ['gauges'] : [];
}
