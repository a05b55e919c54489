import type { MatQuestion } from '../../../assess/evidence/mat/reading.ts';
import type { MatPart } from '../../../bench/action.ts';
import type { Place } from '../../../bench/places.ts';
import { isInsulated, PLATE_HOLDERS } from '../../../engine/parts/brushPlate.ts';
import type { Draw } from '../part.ts';

/** How much of each test a learner does on field frame and brush plate. */
export interface MatLearner {
  readonly name: string;
  /** Share of the lamp's results, of the tester's, of the drops. */
  readonly lamp: number;
  readonly tester: number;
  readonly drops: number;
  readonly looks: number;
  /** Keeps the brushes of a frame apart, and leans on the holders of a plate. */
  readonly handles: boolean;
  readonly writes: boolean;
}

const learner = (name: string, shares: Partial<Omit<MatLearner, 'name'>>): MatLearner => ({
  name,
  lamp: 0,
  tester: 0,
  drops: 0,
  looks: 0,
  handles: true,
  writes: false,
  ...shares,
});

export const MAT_LEARNERS: readonly MatLearner[] = [
  learner('expert', { lamp: 1, tester: 1, drops: 1, looks: 1 }),
  learner('careful', { lamp: 1, tester: 0.5, looks: 0.5, writes: true }),
  learner('hurried', { lamp: 0.6, handles: false, writes: true }),
  learner('lamp only', { lamp: 1 }),
  learner('tester only', { tester: 1 }),
  learner('drops only', { drops: 1, writes: true }),
  learner('dabbler', { lamp: 0.4, tester: 0.2, drops: 0.3, looks: 0.2 }),
  learner('guesser', { looks: 0.3 }),
];

type Ask = Pick<MatQuestion, 'kind' | 'places'> & { readonly leanedOn?: Place };

const FRAME_ASKS: readonly Ask[] = [
  { kind: 'lamp', places: ['field:terminal', 'field:brush1'] },
  { kind: 'lamp', places: ['field:terminal', 'field:brush2'] },
  { kind: 'lamp', places: ['field:case', 'field:brush1'] },
  { kind: 'lamp', places: ['field:case', 'field:brush2'] },
  { kind: 'megohm', places: ['field:case', 'field:brush1'] },
  { kind: 'megohm', places: ['field:case', 'field:brush2'] },
  { kind: 'drop', places: ['field:terminal', 'field:brush1'] },
  { kind: 'drop', places: ['field:terminal', 'field:brush2'] },
];
const PLATE_ASKS: readonly Ask[] = PLATE_HOLDERS.flatMap((holder): Ask[] => [
  { kind: 'lamp', places: ['plate:metal', holder] },
  { kind: 'lamp', places: ['plate:metal', holder], leanedOn: holder },
  ...(isInsulated(holder) ? [{ kind: 'megohm' as const, places: ['plate:metal', holder] as const }] : []),
]);

const LENS: Readonly<Record<MatPart, readonly Place[]>> = {
  fieldFrame: ['field:case', 'field:brush1', 'field:brush2'],
  brushPlate: [...PLATE_HOLDERS, 'plate:metal'],
};

/** What a learner asks of a part, and where they look. */
export function asked(
  part: MatPart,
  { lamp, tester, drops, looks, handles }: MatLearner,
  draw: Draw,
): { readonly questions: readonly MatQuestion[]; readonly looked: readonly Place[] } {
  const shares = { lamp, megohm: tester, drop: drops };
  const asks = part === 'fieldFrame' ? FRAME_ASKS : PLATE_ASKS;
  const questions = asks
    .filter(({ kind, leanedOn }) => draw() < shares[kind] && (handles || leanedOn === undefined))
    .map(({ kind, places, leanedOn = null }): MatQuestion => {
      const asked = { places, brushesApart: handles, leanedOn };
      if (kind === 'drop') return { kind, ...asked, feed: places };
      return kind === 'megohm' ? { kind, ...asked, volt: 250 } : { kind, ...asked };
    });
  return { questions, looked: LENS[part].filter(() => draw() < looks) };
}
