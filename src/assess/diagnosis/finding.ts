import type { Condition } from '../../attempt/condition.ts';
import type { Clue } from '../../bench/observation.ts';
import type { TestKind } from '../../bench/paper.ts';
import type { Place } from '../../bench/places.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { cluesAt } from '../../scenario/hidden/looks.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { Expected } from './expected.ts';
import type { PlaceClass } from './place.ts';

/** One thing the matter with a part, with the answers that are right for it. */
export interface TrueFinding<Fault = unknown> {
  readonly fault: Fault;
  readonly expected: Expected;
  readonly place: PlaceClass;
  /** Tests the job allows that show it; none: no verdict on it can be asked for. */
  readonly toldBy: readonly TestKind[];
  /** A remedy done at this bench has cured it. */
  readonly cured: boolean;
}

/** A part as it lies when something is said of it. */
export interface PartAt {
  readonly scenario: Scenario;
  readonly design: ArmatureDesign;
  readonly condition: Condition;
  /** What the lens shows at a place, as far as it is known; left out: all that is there to be seen. */
  readonly clues?: (place: Place) => readonly Clue[];
}

/** What the lens shows at a place of a part. */
export function shownAt({ scenario, design, clues }: PartAt, place: Place): readonly Clue[] {
  return clues?.(place) ?? cluesAt(scenario.hidden, design, place);
}

/** Findings that no test can tell from one another count once; those with the key null stand alone. */
export function asOne<F>(
  findings: readonly TrueFinding<F>[],
  keyOf: (finding: TrueFinding<F>) => string | null,
): TrueFinding<F>[] {
  const keys = findings.map(keyOf);
  return findings.filter((_, nth) => keys[nth] === null || keys.indexOf(keys[nth]!) === nth);
}
