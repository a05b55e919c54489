import type { PartKind } from '../../bench/action.ts';
import type { Condition, Disposition, Finding, Verdict } from '../../bench/paper.ts';
import type { Job } from '../../scenario/public/job.ts';
import { armatureFindings } from './armatureVerdict.ts';
import { frameFindings } from './frameVerdict.ts';
import type { Notes } from './notes.ts';
import { plateFindings } from './plateVerdict.ts';
import { bearsSkim, isTurnedDown, runsOut, wearFindings } from './wearVerdict.ts';

/** What is the matter with a part as the notes have it now. */
export function findingsOf(part: PartKind, notes: Notes, job: Job, chalked: number): Finding[] {
  const worn = wearFindings(part, notes, job);
  switch (part) {
    case 'armature':
      return [...armatureFindings(notes, job, chalked), ...worn];
    case 'fieldFrame':
      return [...frameFindings(notes, job), ...worn];
    case 'brushPlate':
      return [...plateFindings(notes, job), ...worn];
  }
}

/** What the workshop does with a part of each condition, the heaviest first. */
const NEXT: Readonly<Record<PartKind, readonly (readonly [Disposition, readonly Condition[]])[]>> = {
  armature: [
    ['winder', ['grounded', 'openCoil', 'reversed', 'poorInsulation']],
    ['resolder', ['badRiserJoint']],
    ['cleanAndRetest', ['bridgedBars', 'shortedCoil', 'worn']],
  ],
  fieldFrame: [
    ['winder', ['openCoil', 'grounded', 'shortedCoil', 'poorInsulation']],
    ['resolder', ['brokenJoint']],
    ['replace', ['worn']],
  ],
  brushPlate: [
    ['replace', ['grounded', 'brokenJoint', 'worn']],
    ['cleanAndRetest', ['bridgedBars', 'looseRivet', 'poorInsulation']],
  ],
};

function dispositionOf(part: PartKind, findings: readonly Finding[], notes: Notes, job: Job): Disposition {
  if (part === 'armature' && isScrap(notes, job)) return 'replace';
  const conditions = findings.map(({ condition }) => condition);
  if (conditions.includes('shortedCoil') && notes.done.length > 0) return 'winder';
  const next = NEXT[part].find(([, of]) => conditions.some((one) => of.includes(one)));
  return next?.[0] ?? 'service';
}

/** Turned down as far as it may be, or running out and too thin to be turned true. */
function isScrap(notes: Notes, job: Job): boolean {
  return isTurnedDown(notes, job) || (runsOut(notes, job) && !bearsSkim(notes, job));
}

/**
 * The verdict on one part: what is the matter with it, what was and has been cured, and what happens next.
 * @param cured what was found and is gone since
 */
export function verdictOn(
  part: PartKind,
  notes: Notes,
  job: Job,
  { chalked, cured }: { readonly chalked: number; readonly cured: readonly Finding[] },
): Verdict {
  const left = findingsOf(part, notes, job, chalked);
  const all = [...cured, ...left];
  const findings: readonly Finding[] =
    all.length > 0 ? all : [{ condition: 'sound', place: { kind: 'somewhere' } }];
  const disposition = dispositionOf(part, left, notes, job);
  return { part, findings, disposition, sure: 0.9, because: because(part, notes) };
}

function because(part: PartKind, notes: Notes): string {
  const work = notes.done.length > 0 ? `; ${notes.done.length} remedies and a retest` : '';
  if (part === 'fieldFrame') {
    const lamp = [...notes.continuity, ...notes.fieldInsulation].map(({ lamp: seen }) => seen).join(', ');
    return `lamp ${lamp || 'not used'}`;
  }
  if (part === 'brushPlate') {
    const lamp = notes.holders.map(({ alone, pressed }) => `${alone}/${pressed}`).join(', ');
    return `lamp left alone and leaned on: ${lamp || 'not used'}${work}`;
  }
  const lamp = notes.lit === null ? 'not used' : notes.lit.length > 0 ? 'lit' : 'dark';
  const strip = notes.strip.some(({ pull }) => pull > 0) ? 'pulled' : 'still';
  return `readings of ${notes.neighbour.length} pairs, lamp ${lamp}, strip ${strip}${work}`;
}
