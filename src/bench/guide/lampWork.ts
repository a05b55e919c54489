import { MAT_TESTS, type MatTest } from '../matTests.ts';
import { type LeadId, PANEL_LEADS, type Place, partner } from '../places.ts';
import { LEAD_WORDS, placeWords } from '../placeWords.ts';
import { handlesWork } from './handles.ts';
import { takenUp } from './matWork.ts';
import { type Asked, doing, first, type GuideStep, hungUp, powered, writing } from './step.ts';

/** Lamp tests of field frame and brush plate: an armature in the cradle, LOW, the lamp proved before and after. */

const BECAUSE: Readonly<Record<MatTest, string>> = {
  fieldContinuity:
    'Each branch must carry current to its own brush: dark means an open coil or a broken joint.',
  fieldInsulation: 'The coils must not touch the case: a lamp that lights has found a grounded coil.',
  plateInsulation:
    'These holders must not touch the plate: a lamp that lights has found dirt, a rivet or a failed insulator.',
  plateEarthed: 'These brushes must be joined to the plate: dark means a broken pigtail or holder joint.',
};

export function lampWork(test: MatTest, asked: Asked): GuideStep | null {
  const { part, from, to } = MAT_TESTS[test];
  const next = to.find((place) => !asked.lines.some((line) => line.test === test && line.at === place));
  if (next === undefined) return null;
  // Either probe may stay: whichever lies there already.
  const stays = asked.seen.leads['lamp.2'].touches === from ? 'lamp.2' : 'lamp.1';
  const goes = partner(stays);
  return first(
    () => hungUp(['ammeter.1', 'ammeter.2', 'tester.1', 'tester.2', 'drop.1', 'drop.2'], asked),
    () => cradled(asked),
    () => takenUp(part, asked),
    () => handlesWork(asked),
    () => (part === 'fieldFrame' ? brushesApart(asked) : null),
    () =>
      powered(
        'low',
        asked,
        'LOW is the only place where the lamp is live; from now on both tips carry mains voltage.',
      ),
    () => (asked.watched.lamp === 'unproved' ? proved(asked) : null),
    () => tipOn(stays, from, asked, BECAUSE[test]),
    () => tipOn(goes, next, asked, BECAUSE[test]),
    () => (part === 'brushPlate' ? leaned(goes, next, asked) : null),
    () =>
      writing(
        test,
        `Write down what the lamp did at ${named(next, asked)}.`,
        part === 'brushPlate'
          ? 'What is written at once is neither forgotten nor touched up. A lamp that lit for a moment, leaned on or not, has lit: say so in the remark.'
          : 'What is written at once is neither forgotten nor touched up.',
      ),
  );
}

function cradled({ seen }: Asked): GuideStep | null {
  if (seen.cradle === 'armature') return null;
  return doing(
    { type: 'armature.place' },
    'Lay an armature in the cradle.',
    'It closes the magnetic circuit: with an empty cradle the growler winding draws several times its current.',
    'armature',
  );
}

function brushesApart(asked: Asked): GuideStep | null {
  if (asked.seen.brushesApart) return null;
  const lifted = hungUp(
    PANEL_LEADS.filter((lead) => asked.seen.leads[lead].touches !== null),
    asked,
  );
  return (
    lifted ??
    doing(
      { type: 'brushes.part' },
      'Keep the two field brushes apart.',
      'While they touch, one good branch hides the other.',
      'fieldFrame',
    )
  );
}

/** The proof afterwards, when the work with the lamp is done; null where it is not owed. */
export function provedAgain(asked: Asked): GuideStep | null {
  return asked.watched.lamp === 'used' ? proved(asked) : null;
}

/** Both tips in the hands and together until the lamp is seen to light. */
function proved(asked: Asked): GuideStep {
  const { seen, watched } = asked;
  const lead = (['lamp.1', 'lamp.2'] as const).find((id) => seen.leads[id].at !== 'hand');
  if (lead !== undefined) return taken(lead);
  const because =
    watched.lamp === 'used'
      ? 'Only now do the dark results count: the lamp was alive before them and after.'
      : 'A dead lamp is as dark as good insulation: see it light before you trust it dark.';
  const together = seen.leads['lamp.1'].touches === 'tip:lamp.2';
  if (together) return { do: 'See the lamp light.', because, act: null, highlight: null };
  return doing(
    { type: 'lead.touch', lead: 'lamp.1', place: 'tip:lamp.2' },
    'Touch the two tips together.',
    because,
    'lamp.1',
  );
}

function taken(lead: LeadId): GuideStep {
  return doing(
    { type: 'lead.take', lead, grip: 'handle' },
    `Take ${LEAD_WORDS[lead]} by its handle.`,
    'Behind the guard, never in front of it: a few millimetres further are mains.',
    lead,
  );
}

function tipOn(lead: LeadId, place: Place, asked: Asked, because: string): GuideStep | null {
  const { at, touches } = asked.seen.leads[lead];
  if (at !== 'hand') return taken(lead);
  if (touches === place) return null;
  return doing(
    { type: 'lead.touch', lead, place },
    `Put ${LEAD_WORDS[lead]} on ${named(place, asked)}.`,
    because,
    place,
  );
}

/** A loose rivet makes or breaks only when the holder is pressed. */
function leaned(lead: LeadId, holder: Place, { watched }: Asked): GuideStep | null {
  if (watched.leanedOn.includes(holder)) return null;
  return doing(
    { type: 'lead.lean', lead, on: true },
    `Lean on ${LEAD_WORDS[lead]} and watch the lamp.`,
    'A loose rivet makes or breaks only when the holder is pressed.',
    lead,
  );
}

function named(place: Place, { seen, job }: Asked): string {
  return placeWords(job.armature, seen, place);
}
