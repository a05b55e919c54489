import type { MatPart, PartKind } from '../bench/action.ts';
import type { TestKind } from '../bench/paper.ts';
import { JOB_PLATES } from '../engine/parts/brushPlate.ts';
import { JOB_FRAMES } from '../engine/parts/fieldFrameDesigns.ts';
import { checkFieldFault, fieldClaim, plateClaim } from '../engine/parts/frameRules.ts';
import type { Issue, Scenario, ScenarioPublic } from './scenario.ts';
import { nameValue } from './sentences.ts';

/** The part a test is made on; those left out serve every part. */
export const PART_OF_TEST: Readonly<Partial<Record<TestKind, PartKind>>> = {
  spaced: 'armature',
  neighbour: 'armature',
  ground: 'armature',
  strip: 'armature',
  fieldContinuity: 'fieldFrame',
  fieldInsulation: 'fieldFrame',
  plateInsulation: 'brushPlate',
  plateEarthed: 'brushPlate',
};

/** What the halves say of their parts that their fields, one by one, cannot show to be wrong. */
export function checkParts(scenario: Scenario): Issue[] {
  const { public: shown, hidden } = scenario;
  return [
    ...oncePerList('public.parts', 'part', shown.parts),
    ...oncePerList('public.tests', 'test', shown.tests),
    ...shown.tests.flatMap((test, nth) => testOfNoPart(shown, test, nth)),
    ...namedPart(scenario, 'fieldFrame', [...JOB_FRAMES.keys()]),
    ...namedPart(scenario, 'brushPlate', [...JOB_PLATES.keys()]),
    ...cradleArmature(shown, hidden.armature.faults.length),
    ...fieldFaults(scenario),
    ...claimedTwice('hidden.brushPlate.faults', (hidden.brushPlate?.faults ?? []).map(plateClaim)),
  ];
}

function oncePerList(path: string, what: string, list: readonly string[]): Issue[] {
  return list.flatMap((item, nth) =>
    list.indexOf(item) === nth
      ? []
      : [
          {
            path: `${path}[${nth}]`,
            sentence: `Expected each ${what} once, but ${nameValue(item)} came again.`,
          },
        ],
  );
}

function testOfNoPart({ parts }: ScenarioPublic, test: TestKind, nth: number): Issue[] {
  const part = PART_OF_TEST[test];
  if (part === undefined || parts.includes(part)) return [];
  const sentence = `Expected tests of the parts of this job (${parts.join(', ')}), but ${nameValue(test)} came.`;
  return [{ path: `public.tests[${nth}]`, sentence }];
}

/** Field frame and brush plate: named and filled exactly when they are among the parts. */
function namedPart({ public: shown, hidden }: Scenario, part: MatPart, known: readonly string[]): Issue[] {
  const named = shown[part];
  const onJob = shown.parts.includes(part);
  if (onJob && (named === undefined || !known.includes(named))) {
    const sentence = `Expected a known type (${known.join(', ')}), but ${nameValue(named)} came.`;
    return [{ path: `public.${part}`, sentence }];
  }
  const stray = [
    ...(named === undefined ? [] : [`public.${part}`]),
    ...(hidden[part] === undefined ? [] : [`hidden.${part}`]),
  ];
  if (onJob) return [];
  return stray.map((path) => ({
    path,
    sentence: `Expected this left out, since public.parts does not name "${part}".`,
  }));
}

function cradleArmature({ parts }: ScenarioPublic, faults: number): Issue[] {
  if (parts.includes('armature') || faults === 0) return [];
  const sentence =
    'Expected no faults, since public.parts does not name "armature": the one in the cradle is the workshop’s own sound one.';
  return [{ path: 'hidden.armature.faults', sentence }];
}

function fieldFaults({ public: shown, hidden }: Scenario): Issue[] {
  const frame = JOB_FRAMES.get(shown.fieldFrame ?? '');
  const faults = hidden.fieldFrame?.faults ?? [];
  if (frame === undefined) return [];
  const impossible = faults.flatMap((fault, nth) =>
    checkFieldFault(frame, fault).map(({ path, sentence }) => ({
      path: `hidden.fieldFrame.faults[${nth}].${path}`,
      sentence,
    })),
  );
  return impossible.length > 0
    ? impossible
    : claimedTwice('hidden.fieldFrame.faults', faults.map(fieldClaim));
}

function claimedTwice(path: string, claims: readonly string[]): Issue[] {
  return claims.flatMap((claim, later) => {
    const earlier = claims.indexOf(claim);
    if (earlier === later) return [];
    const sentence = `Expected faults that can be true together, but this one and faults[${earlier}] both decide ${claim}.`;
    return [{ path: `${path}[${later}]`, sentence }];
  });
}
