import { isArmatureRemedy, REMEDY_MINUTES, type RemedyKind } from '../../engine/parts/remedies.ts';
import type { Action } from '../action.ts';
import { actionWords } from '../actWords.ts';
import { ALL_LEADS } from '../places.ts';
import { armatureRemedy } from './armatureFindings.ts';
import { liftedOut, takenUp } from './matWork.ts';
import { plateRemedy } from './plateFindings.ts';
import { type Asked, doing, first, type GuideStep, hungUp, powered } from './step.ts';

/** A remedy that the lines on the sheet call for, with the reason. */
export interface Called {
  readonly remedy: RemedyKind;
  readonly bar?: number;
  readonly because: string;
}

/**
 * What can be cured at this bench is cured after it was found, one remedy at a time, and tested again; null when
 * nothing that was written down calls for a remedy that has not been tried.
 */
export function remedyWork(asked: Asked): GuideStep | null {
  const called = calledFor(asked);
  return called === null ? null : done(called, asked);
}

/** The remedy that comes next, or null. */
export function calledFor(asked: Asked): Called | null {
  const { parts } = asked.job;
  return (
    (parts.includes('armature') ? armatureRemedy(asked) : null) ??
    (parts.includes('brushPlate') ? plateRemedy(asked) : null)
  );
}

function done({ remedy, bar, because }: Called, asked: Asked): GuideStep {
  const act: Action = { type: 'remedy.do', remedy, ...(bar === undefined ? {} : { bar }) };
  const say = actionWords(asked.job.armature, asked.seen, act);
  const step = doing(act, `${say}.`, `${because} ${retestWords(remedy)}`, highlightOf(act));
  return (
    first(
      () => hungUp(ALL_LEADS, asked),
      () =>
        powered(
          'off',
          asked,
          'Off before any work on a part: filings, solder and fingers go where live metal is.',
        ),
      () => stripAway(asked),
      () =>
        isArmatureRemedy(remedy)
          ? liftedOut(asked, 'Filings and solder do not belong in the jaws.')
          : takenUp('brushPlate', asked),
    ) ?? step
  );
}

function retestWords(remedy: RemedyKind): string {
  return `It takes about ${REMEDY_MINUTES[remedy]} minutes, and the test that found it is done again afterwards.`;
}

function highlightOf(act: Extract<Action, { type: 'remedy.do' }>): GuideStep['highlight'] {
  return act.bar === undefined ? 'remedies' : `riser:${act.bar}`;
}

function stripAway({ seen }: Asked): GuideStep | null {
  if (seen.strip.at === 'rail') return null;
  return doing({ type: 'strip.hang' }, 'Hang the strip up.', 'A remedy takes both hands.', 'strip');
}
