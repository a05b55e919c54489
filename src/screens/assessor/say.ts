import type { CriterionJudgement, Decision, EvidenceRule } from '../../records/record.ts';

/** Points without needless zeros. */
export function tidy(value: number): string {
  return String(Number(value.toFixed(1)));
}

export function decisionWords(outcome: Decision): string {
  return outcome === 'competent' ? 'Competent' : 'Not yet';
}

const MET_WORDS: Readonly<Record<CriterionJudgement['met'], string>> = {
  met: 'met',
  notYet: 'not yet',
  notSeen: 'not seen',
};

export function metWords(met: CriterionJudgement['met']): string {
  return MET_WORDS[met];
}

/** What each rule asks, in the assessor's own words. */
export const RULE_WORDS: Readonly<Record<EvidenceRule, readonly [name: string, question: string]>> = {
  validity: ['Valid', 'it shows what the criteria ask for'],
  sufficiency: ['Sufficient', 'there is enough of it, of more than one kind where that is asked'],
  authenticity: ['Authentic', 'it is this learner’s own work'],
  currency: ['Current', 'it shows what they can do now'],
};
