import type { PartKind } from '../../../bench/action.ts';
import type { Condition, Disposition, Finding, FoundPlace, Verdict } from '../../../bench/paper.ts';

export interface FindingDraft {
  readonly condition: Condition | '';
  readonly place: FoundPlace['kind'];
  /** Bars from the chalk, as typed. */
  readonly count: string;
}

export interface VerdictDraft {
  readonly findings: readonly FindingDraft[];
  readonly disposition: Disposition | '';
  /** 0..1 in steps of 0.05. */
  readonly sure: number;
  readonly because: string;
}

export const EMPTY_FINDING: FindingDraft = { condition: '', place: 'somewhere', count: '' };
export const EMPTY_VERDICT: VerdictDraft = {
  findings: [EMPTY_FINDING],
  disposition: '',
  sure: 0.5,
  because: '',
};

/** Conditions that are about the whole part: no place is asked for. */
export function isPlaceless(condition: Condition | ''): boolean {
  return condition === 'sound' || condition === 'notTested' || condition === '';
}

export function draftOf(verdict: Verdict | null): VerdictDraft {
  if (!verdict) return EMPTY_VERDICT;
  const findings = verdict.findings.map(({ condition, place }) => ({
    condition,
    place: place.kind,
    count: place.kind === 'somewhere' ? '' : String(place.count),
  }));
  return { ...verdict, findings };
}

export type Decided =
  | { readonly ok: true; readonly verdict: Verdict }
  | { readonly ok: false; readonly problems: readonly string[] };

/** Reads a verdict off the form, or says what is still missing. @param bars bars of the part, for the count */
export function decide(draft: VerdictDraft, part: PartKind, bars: number): Decided {
  const problems = [
    ...draft.findings.flatMap((finding, index) => findingProblems(finding, index, bars)),
    ...togetherProblems(draft.findings),
    ...(draft.disposition ? [] : ['Say what happens to the part next.']),
  ];
  if (problems.length > 0 || !draft.disposition) return { ok: false, problems };
  const { disposition, sure } = draft;
  const findings = draft.findings.map(toFinding);
  return { ok: true, verdict: { part, findings, disposition, sure, because: draft.because.trim() } };
}

function findingProblems(finding: FindingDraft, index: number, bars: number): string[] {
  if (!finding.condition) return [`Choose a condition for finding ${index + 1}.`];
  if (isPlaceless(finding.condition) || finding.place === 'somewhere') return [];
  const count = Number(finding.count);
  const counted = finding.count.trim() !== '' && Number.isInteger(count) && count >= 0 && count < bars;
  const came = finding.count.trim() === '' ? 'nothing is written' : `“${finding.count}” is written`;
  return counted
    ? []
    : [`The place of finding ${index + 1} is counted from the chalk, 0 to ${bars - 1}; ${came}.`];
}

function togetherProblems(findings: readonly FindingDraft[]): string[] {
  const alone = findings.find(({ condition }) => condition === 'sound' || condition === 'notTested');
  return alone && findings.length > 1
    ? ['“Sound” and “not tested” stand alone: take the other findings away.']
    : [];
}

function toFinding(draft: FindingDraft): Finding {
  const condition = draft.condition as Condition;
  if (isPlaceless(condition) || draft.place === 'somewhere')
    return { condition, place: { kind: 'somewhere' } };
  return { condition, place: { kind: draft.place, count: Number(draft.count) } };
}
