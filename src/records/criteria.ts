import * as z from 'zod/mini';
import { parseJsonText } from '../scenario/jsonText.ts';
import type { Parsed } from '../scenario/scenario.ts';
import { issuesFrom } from '../scenario/sentences.ts';

export const CRITERIA_FORMAT = 'slot-and-riser/criteria';
export const CRITERIA_VERSION = 1;

/** One thing the assessor has to be satisfied of, with the marks that speak to it. */
export interface Criterion {
  readonly id: string;
  readonly title: string;
  /** Ids of marks; a mark may speak to several criteria. */
  readonly marks: readonly string[];
}

/** A school's own criteria as data: any unit of competence can be laid over the marks in this way. */
export interface CriteriaSet {
  readonly format: typeof CRITERIA_FORMAT;
  readonly version: typeof CRITERIA_VERSION;
  readonly id: string;
  readonly title: string;
  /** Where the criteria come from, for the record. */
  readonly source: string;
  readonly criteria: readonly Criterion[];
}

const words = (most: number) => z.string().check(z.minLength(1), z.maxLength(most));

const schema = z.strictObject({
  format: z.literal(CRITERIA_FORMAT),
  version: z.literal(CRITERIA_VERSION),
  id: words(80),
  title: words(200),
  source: words(400),
  criteria: z
    .array(
      z.strictObject({ id: words(80), title: words(600), marks: z.array(words(80)).check(z.maxLength(80)) }),
    )
    .check(z.minLength(1), z.maxLength(100)),
});

const MOST_CRITERIA = 500_000;

export function parseCriteriaText(text: string): Parsed<CriteriaSet> {
  const json = parseJsonText(text, 'a file of criteria', MOST_CRITERIA);
  if (!json.ok) return json;
  const read = schema.safeParse(json.value);
  if (!read.success) return { ok: false, issues: issuesFrom(read.error, json.value) };
  const ids = read.data.criteria.map(({ id }) => id);
  const again = ids.findIndex((id, nth) => ids.indexOf(id) !== nth);
  if (again < 0) return { ok: true, value: read.data };
  const sentence = `Expected each criterion once, but "${ids[again]}" came again.`;
  return { ok: false, issues: [{ path: `criteria[${again}].id`, sentence }] };
}

/** Marks of a verdict: those of an armature by their plain names, those of the other parts with the part before it. */
const VERDICT_MARKS: readonly string[] = ['', 'fieldFrame.', 'brushPlate.'].flatMap((part) =>
  ['condition', 'place', 'disposition', 'supported'].map((mark) => `${part}${mark}`),
);

/**
 * The invented workshop's own criteria; common practice of the trade, no source. A record keeps their words as they are,
 * whoever reads it, so they do without those that British and American usage part over.
 */
export const WORKSHOP_CRITERIA: CriteriaSet = {
  format: CRITERIA_FORMAT,
  version: CRITERIA_VERSION,
  id: 'quarry-road-bench',
  title: 'Testing armature, field frame and brush plate at the bench',
  source: 'Quarry Road Training Workshop, own criteria',
  criteria: [
    {
      id: 'prepare',
      title: 'Looks the part over, chalks where counting begins, and places it with the bench off',
      marks: ['prepared', 'lookedFirst', 'chalkedFirst', 'placedOff', 'benchSetRight'],
    },
    {
      id: 'safe',
      title: 'Works a live bench safely and leaves it off',
      marks: ['safeHands', 'probesOff', 'leadsRight', 'cradleFilled', 'notLeftOn', 'keptCool'],
    },
    {
      id: 'open',
      title: 'Tests for open circuit all the way round the commutator, spaced and side by side',
      marks: ['spacedLargest', 'spacedPass', 'neighbourPass', 'needleSpared'],
    },
    {
      id: 'ground',
      title: 'Tests winding and commutator to core and shaft with a lamp proved before and after',
      marks: ['lampProved', 'groundPass'],
    },
    {
      id: 'short',
      title: 'Tests for short circuit with the strip, all round and clear of the jaws',
      marks: ['stripPass', 'stripOnHigh', 'stripClear'],
    },
    {
      id: 'frame',
      title:
        'Tests the field frame with its brushes apart, and the brush plate holder by holder, leaning on each',
      marks: ['fieldContinuityPass', 'fieldInsulationPass', 'plateInsulationPass', 'plateEarthedPass'],
    },
    {
      id: 'measure',
      title:
        'Measures insulation, millivolt drop and wear where the card asks for it, with their precautions',
      marks: ['megohmPass', 'testerSafe', 'millivoltPass', 'dropSafe', 'gaugesRead'],
    },
    {
      id: 'cure',
      title: 'Cures only what a test has found, with the bench off, and tests again',
      marks: ['remedyAfterFinding', 'remedySafe', 'retested', 'partSpared'],
    },
    {
      id: 'decide',
      title: 'Records what was read, names the condition and the place, and says what happens next',
      marks: ['recordedFirst', ...VERDICT_MARKS, 'proven'],
    },
  ],
};
