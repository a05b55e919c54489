import type { PartKind } from '../../../../bench/action.ts';
import { PART_WORDS } from '../../../../bench/toolWords.ts';
import type { Situation, Step } from './step.ts';

/** A verdict for each part of the card, one after the other, and then the job is handed in. */
export function verdictStep({ job, verdicts }: Situation): Step {
  const part = job.parts.find((one) => !verdicts.some((verdict) => verdict.part === one));
  if (part === undefined) {
    return {
      say:
        job.parts.length > 1
          ? 'Read your verdicts once more and hand the job in.'
          : 'Read your verdict once more and hand the job in.',
      why: 'Nothing can be changed afterwards.',
      act: null,
    };
  }
  return { say: `Write your verdict on ${PART_WORDS[part]}.`, why: HOW[part], act: null };
}

/** How the lines about a part are read. */
const HOW: Readonly<Record<PartKind, string>> = {
  armature:
    'Look along each column: what differs, where, and does a second test agree? Say no more than the readings can carry.',
  fieldFrame:
    'A branch that stays dark is open: coil or brush joint. A lamp that lights to the case has found a grounded coil. All as it should be is a verdict too.',
  brushPlate:
    'What stood on the sheet before a remedy, and what stands there after it? If the retest is good the finding is cured; if not, the part needs more than this bench can do.',
};
