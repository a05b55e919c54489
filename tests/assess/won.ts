import { assess } from '../../src/assess/assess.ts';
import { PROVEN_ID } from '../../src/assess/diagnosis/proven.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { expertAttempt, library } from './attempts.ts';
import { namesTheHidden } from './hiddenAnswers.ts';

/**
 * What the expert did not win, with what the expert said: empty when every mark was earned and no rule broken.
 * @param leastProven share of the mark for a proven verdict that is enough: some parts leave even every test on the
 *   card short of proof, and a right verdict then earns part of it
 */
export function notWon(scenario: Scenario, leastProven = 1) {
  const { attempt, verdicts } = expertAttempt(scenario);
  const { marks, stoppedBy } = assess(attempt, library);
  const least = (id: string) => (id.endsWith(PROVEN_ID) ? leastProven : 1);
  const lost = marks
    .filter(({ id, earned, of }) => earned < least(id) * of)
    .map(({ id, sentence }) => `${id}: ${sentence}`);
  const broken = attempt.entries.flatMap(({ outcome }) => outcome.breaches.map(({ interlock }) => interlock));
  const unnamed = verdicts.filter(
    (verdict) => verdict.part !== 'armature' && !namesTheHidden(scenario, verdict),
  );
  return lost.length + broken.length + unnamed.length === 0 && stoppedBy === null
    ? []
    : [{ lost, broken, unnamed, stoppedBy, verdicts, hidden: scenario.hidden }];
}
