import type { PartKind } from '../../../bench/action.ts';
import {
  CONDITIONS_OF,
  type Condition,
  type Disposition,
  type Finding,
  type FoundPlace,
  type Verdict,
} from '../../../bench/paper.ts';

type Holder = Extract<FoundPlace, { readonly kind: 'holder' }>['holder'];

/** Where a finding lies, as chosen on the form: bars carry a count beside it. */
export type PlaceChoice = 'bar' | 'pair' | 'branch:1' | 'branch:2' | Holder | 'somewhere';

export interface FindingDraft {
  readonly condition: Condition | '';
  readonly place: PlaceChoice;
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

/** Places that can be named on each part, finest first. */
export const PLACES_OF: Readonly<Record<PartKind, readonly PlaceChoice[]>> = {
  armature: ['bar', 'pair', 'somewhere'],
  fieldFrame: ['branch:1', 'branch:2', 'somewhere'],
  brushPlate: ['plate:insulated1', 'plate:insulated2', 'plate:earthed1', 'plate:earthed2', 'somewhere'],
};

/** Conditions that are about the whole part: no place is asked for. */
export function isPlaceless(condition: Condition | ''): boolean {
  return condition === 'sound' || condition === 'notTested' || condition === '';
}

export function isCounted(place: PlaceChoice): place is 'bar' | 'pair' {
  return place === 'bar' || place === 'pair';
}

export function draftOf(verdict: Verdict | null): VerdictDraft {
  if (!verdict) return EMPTY_VERDICT;
  const findings = verdict.findings.map(({ condition, place }) => ({
    condition,
    place: choiceOf(place),
    count: 'count' in place ? String(place.count) : '',
  }));
  return { ...verdict, findings };
}

function choiceOf(place: FoundPlace): PlaceChoice {
  if (place.kind === 'branch') return `branch:${place.brush}`;
  return place.kind === 'holder' ? place.holder : place.kind;
}

export type Decided =
  | { readonly ok: true; readonly verdict: Verdict }
  | { readonly ok: false; readonly problems: readonly string[] };

/** Reads a verdict off the form, or says what is still missing. @param bars bars of the armature, for the count */
export function decide(draft: VerdictDraft, part: PartKind, bars: number): Decided {
  const problems = [
    ...draft.findings.flatMap((finding, index) => findingProblems(finding, index, part, bars)),
    ...togetherProblems(draft.findings),
    ...(draft.disposition ? [] : ['Say what happens to the part next.']),
  ];
  if (problems.length > 0 || !draft.disposition) return { ok: false, problems };
  const { disposition, sure } = draft;
  const findings = draft.findings.map(toFinding);
  return { ok: true, verdict: { part, findings, disposition, sure, because: draft.because.trim() } };
}

function findingProblems(finding: FindingDraft, index: number, part: PartKind, bars: number): string[] {
  const { condition, place } = finding;
  if (!condition || !CONDITIONS_OF[part].includes(condition))
    return [`Choose a condition for finding ${index + 1}.`];
  if (isPlaceless(condition) || !isCounted(place)) return [];
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
  return { condition, place: isPlaceless(condition) ? { kind: 'somewhere' } : toPlace(draft) };
}

function toPlace({ place, count }: FindingDraft): FoundPlace {
  switch (place) {
    case 'bar':
    case 'pair':
      return { kind: place, count: Number(count) };
    case 'branch:1':
    case 'branch:2':
      return { kind: 'branch', brush: place === 'branch:1' ? 1 : 2 };
    case 'somewhere':
      return { kind: place };
    default:
      return { kind: 'holder', holder: place };
  }
}
