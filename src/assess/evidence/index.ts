export { type Contacts, contactsOf } from './contacts.ts';
export { type Followed, followReadings, type Moved, type Step, weighReadings } from './follow.ts';
export { type Gathered, gatherReadings, readingsFrom, type WrittenReading } from './gather.ts';
export {
  CONTRADICTED,
  type JudgedFinding,
  type JudgedVerdict,
  type Judgement,
  judge,
  PROVEN,
  type Truth,
} from './judge.ts';
export { createEvidence, type EvidenceInput, type EvidenceModel } from './model.ts';
export { type NextReading, nextReadings } from './nextBest.ts';
export { type Ground, groundOf, judgeRested, type Rested, restedOf } from './ofAttempt.ts';
export { type Possibility, type PossiblePlace, possibilitiesOf } from './possibilities.ts';
export type { Posterior } from './posterior.ts';
export { familyOf, type JobFamily } from './priors.ts';
export type * from './reading.ts';
export { Weigher } from './weigher.ts';
