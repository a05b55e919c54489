import { assess } from '../../src/assess/assess.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { expertAttempt, library } from './attempts.ts';
import { namesTheHidden } from './hiddenAnswers.ts';

/** What the expert did not win, with what the expert said: empty when every mark was earned and no rule broken. */
export function notWon(scenario: Scenario) {
  const { attempt, verdicts } = expertAttempt(scenario);
  const { marks, stoppedBy } = assess(attempt, library);
  const lost = marks.filter(({ earned, of }) => earned < of).map(({ id, sentence }) => `${id}: ${sentence}`);
  const broken = attempt.entries.flatMap(({ outcome }) => outcome.breaches.map(({ interlock }) => interlock));
  const unnamed = verdicts.filter(
    (verdict) => verdict.part !== 'armature' && !namesTheHidden(scenario, verdict),
  );
  return lost.length + broken.length + unnamed.length === 0 && stoppedBy === null
    ? []
    : [{ lost, broken, unnamed, stoppedBy, verdicts, hidden: scenario.hidden }];
}
