import { type MatPart, PART_KINDS, type PartKind } from '../../bench/action.ts';
import { TEST_KINDS, type TestKind } from '../../bench/paper.ts';
import { PART_OF_TEST } from '../../scenario/checkParts.ts';
import type { Scenario, ScenarioHidden, ScenarioPublic } from '../../scenario/scenario.ts';
import type { BenchFault, FieldFault, InstructorDesk, PlateFault } from './desk.ts';
import type { Other, OtherFault } from './matSpots.ts';

/** Changes an instructor makes to what a job is about, each giving a new scenario. */

/** The tests a card of these parts can allow. */
export function testsFor(parts: readonly PartKind[]): readonly TestKind[] {
  return TEST_KINDS.filter((test) => {
    const part = PART_OF_TEST[test];
    return part === undefined || parts.includes(part);
  });
}

/** Takes a part in, sound and with its own tests, or out again with all that was said of it. */
export function withPart(
  scenario: Scenario,
  part: PartKind,
  on: boolean,
  desk: Pick<InstructorDesk, 'frameTypes' | 'plateTypes'>,
): Scenario {
  const { public: shown } = scenario;
  const parts = PART_KINDS.filter((one) => (one === part ? on : shown.parts.includes(one)));
  const tests = testsFor(parts).filter((test) =>
    on && PART_OF_TEST[test] === part ? true : shown.tests.includes(test),
  );
  const next = { ...scenario, public: { ...shown, parts, tests } };
  if (part === 'armature')
    return on ? next : { ...next, hidden: { ...next.hidden, armature: { faults: [] } } };
  return on ? withMat(next, part, desk) : withoutMat(next, part);
}

function withMat(
  scenario: Scenario,
  part: MatPart,
  { frameTypes, plateTypes }: Pick<InstructorDesk, 'frameTypes' | 'plateTypes'>,
): Scenario {
  const type = (part === 'fieldFrame' ? frameTypes : plateTypes)[0]?.typeId ?? '';
  return {
    ...scenario,
    public: { ...scenario.public, [part]: type },
    hidden: { ...scenario.hidden, [part]: { faults: [] } },
  };
}

function withoutMat({ public: shown, hidden, ...rest }: Scenario, part: MatPart): Scenario {
  const { [part]: _type, ...publicRest } = shown;
  const { [part]: _faults, ...hiddenRest } = hidden;
  return { ...rest, public: publicRest as ScenarioPublic, hidden: hiddenRest as ScenarioHidden };
}

/** Another frame or plate, sound: places do not carry over. */
export function withType(scenario: Scenario, part: MatPart, typeId: string): Scenario {
  return {
    ...scenario,
    public: { ...scenario.public, [part]: typeId },
    hidden: { ...scenario.hidden, [part]: { faults: [] } },
  };
}

export function otherFaults({ hidden }: Scenario, other: Other): readonly OtherFault[] {
  return hidden[other]?.faults ?? [];
}

export function withOtherFaults(scenario: Scenario, other: Other, faults: readonly OtherFault[]): Scenario {
  const { bench: _, ...hidden } = scenario.hidden;
  switch (other) {
    case 'fieldFrame':
      return {
        ...scenario,
        hidden: { ...scenario.hidden, fieldFrame: { faults: faults as readonly FieldFault[] } },
      };
    case 'brushPlate':
      return {
        ...scenario,
        hidden: { ...scenario.hidden, brushPlate: { faults: faults as readonly PlateFault[] } },
      };
    case 'bench':
      return {
        ...scenario,
        hidden:
          faults.length === 0 ? hidden : { ...hidden, bench: { faults: faults as readonly BenchFault[] } },
      };
  }
}

type Wear = NonNullable<ScenarioHidden['wear']>;
export type WornLength = Exclude<keyof Wear, 'brushLengthsMm'>;

/** A length of the commutator other than that of one in good order; null: as in good order. */
export function withWear(scenario: Scenario, what: WornLength, mm: number | null): Scenario {
  const { [what]: _, ...others } = scenario.hidden.wear ?? {};
  return withAllWear(scenario, mm === null ? others : { ...others, [what]: mm });
}

/** Length of a brush in good order, mm: hardly run in. */
export const FRESH_BRUSH_MM = 14;
const FRESH_BRUSHES = [FRESH_BRUSH_MM, FRESH_BRUSH_MM, FRESH_BRUSH_MM, FRESH_BRUSH_MM] as const;

export function withBrush(scenario: Scenario, brush: 0 | 1 | 2 | 3, mm: number | null): Scenario {
  const { brushLengthsMm = FRESH_BRUSHES, ...others } = scenario.hidden.wear ?? {};
  const [one, two, three, four] = brushLengthsMm.map((length, nth) =>
    nth === brush ? (mm ?? FRESH_BRUSH_MM) : length,
  ) as [number, number, number, number];
  const lengths = [one, two, three, four] as const;
  const fresh = lengths.every((length) => length === FRESH_BRUSH_MM);
  return withAllWear(scenario, fresh ? others : { ...others, brushLengthsMm: lengths });
}

function withAllWear({ hidden, ...rest }: Scenario, wear: Wear): Scenario {
  const { wear: _, ...others } = hidden;
  return { ...rest, hidden: Object.keys(wear).length === 0 ? others : { ...others, wear } };
}

type CardLimits = NonNullable<ScenarioPublic['limits']>;

/** A limit of the card's own; null: the usual one. */
export function withLimit(scenario: Scenario, what: keyof CardLimits, value: number | null): Scenario {
  const { limits = {}, ...shown } = scenario.public;
  const { [what]: _, ...others } = limits;
  const next: CardLimits = value === null ? others : { ...others, [what]: value };
  return { ...scenario, public: Object.keys(next).length === 0 ? shown : { ...shown, limits: next } };
}
