import type { Condition, Finding, FoundPlace } from '../../bench/paper.ts';
import type { Job } from '../../scenario/public/job.ts';
import { neighbourTest, spacedTest } from './ammeterTests.ts';
import { lookAtArmature, stripTest } from './armatureTests.ts';
import { isDirty } from './armatureVerdict.ts';
import type { Hands } from './hands.ts';
import { bringForward, lookAtMat, plateTests } from './matTests.ts';
import { type Done, type Notes, saw } from './notes.ts';
import { barDrops, gaugeCommutator, megohmTest } from './railTests.ts';
import { findingsOf } from './verdicts.ts';
import { bearsSkim, isShallow, isTurnedDown, runsOut } from './wearVerdict.ts';

/** What cleaning or solder can cure is cured at this bench, part out and bench off, and tested again. */

export interface Cured {
  readonly notes: Notes;
  /** What was found and is gone since. */
  readonly cured: readonly Finding[];
}

/** A card that asks for the gauges leaves the decision about work on the part to the bench. */
export function curesHere(job: Job): boolean {
  return job.tests.includes('gauges');
}

/** Remedy after remedy, each followed by a retest, until the bench can do no more for a part. */
export function cure(hands: Hands, part: 'armature' | 'brushPlate', first: Notes, chalked: number): Cured {
  const { job } = hands;
  let state: Cured = { notes: first, cured: [] };
  for (;;) {
    const before = findingsOf(part, state.notes, job, chalked);
    const next =
      part === 'armature'
        ? armatureRemedy(before, state.notes, job, chalked)
        : plateRemedy(before, state.notes);
    if (next === null) return state;
    const notes =
      part === 'armature'
        ? workArmature(hands, next, state.notes, chalked)
        : workPlate(hands, next, state.notes);
    const left = findingsOf(part, notes, job, chalked);
    const gone = before.filter((was) => !left.some((is) => isSame(was, is))).map(nameAfterCure);
    state = { notes, cured: [...state.cured, ...gone] };
  }
}

/** What cleaning has taken away was no breakdown. */
function nameAfterCure(finding: Finding): Finding {
  return finding.condition === 'grounded' ? { ...finding, condition: 'bridgedBars' } : finding;
}

/** The same trouble, whatever name the retest gives it. */
function isSame(was: Finding, is: Finding): boolean {
  const kin: readonly (readonly Condition[])[] = [
    ['bridgedBars', 'shortedCoil'],
    ['bridgedBars', 'grounded'],
  ];
  const alike =
    was.condition === is.condition ||
    kin.some((pair) => pair.includes(was.condition) && pair.includes(is.condition));
  return alike && (was.condition === 'worn' || samePlace(was.place, is.place));
}

function samePlace(one: FoundPlace, other: FoundPlace): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function tried(notes: Notes, remedy: Done['remedy'], bar: number | null = null): boolean {
  return notes.done.some((one) => one.remedy === remedy && one.bar === bar);
}

/** Nothing is worked on that goes to the winder or the scrap bin all the same. */
const BEYOND: readonly Condition[] = ['grounded', 'openCoil', 'reversed', 'poorInsulation'];

function armatureRemedy(found: readonly Finding[], notes: Notes, job: Job, chalked: number): Done | null {
  if (found.some(({ condition }) => BEYOND.includes(condition)) || isTurnedDown(notes, job)) return null;
  const joint = found.find(({ condition }) => condition === 'badRiserJoint');
  if (joint?.place.kind === 'bar') {
    const bar = (joint.place.count + chalked) % job.armature.bars;
    if (!tried(notes, 'resolderRiser', bar)) return { remedy: 'resolderRiser', bar };
  }
  const bridge = found.find(({ condition }) => condition === 'bridgedBars');
  const remedy =
    surfaceRemedy(notes, job) ?? (bridge === undefined ? null : bridgeRemedy(bridge, notes, job, chalked));
  return remedy === null ? null : { remedy, bar: null };
}

/** A dirty or untrue surface is skimmed, shallow mica cut down. */
function surfaceRemedy(notes: Notes, job: Job): 'skimAndPolish' | 'undercut' | null {
  const rough = isDirty(notes, job) || runsOut(notes, job);
  if (rough && bearsSkim(notes, job) && !tried(notes, 'skimAndPolish')) return 'skimAndPolish';
  return isShallow(notes, job) && !tried(notes, 'undercut') ? 'undercut' : null;
}

/** Carbon comes out with a brush; copper, and whatever the brush leaves, with a saw. */
function bridgeRemedy(
  { place }: Finding,
  notes: Notes,
  job: Job,
  chalked: number,
): 'brushBetweenBars' | 'undercut' | null {
  if (place.kind !== 'pair') return null;
  const bar = (place.count + chalked) % job.armature.bars;
  const copper = [bar, (bar + 1) % job.armature.bars].some((one) =>
    saw(notes, `bar:${one}`, 'metalAcrossMica'),
  );
  if (!copper && !tried(notes, 'brushBetweenBars')) return 'brushBetweenBars';
  return tried(notes, 'undercut') ? null : 'undercut';
}

function workArmature(hands: Hands, { remedy, bar }: Done, notes: Notes, chalked: number): Notes {
  const { tests } = hands.job;
  hands.do({ type: 'remedy.do', remedy, ...(bar === null ? {} : { bar }) });
  const gauges = bar === null && remedy !== 'brushBetweenBars' ? gaugeCommutator(hands) : [];
  const looks = tests.includes('look') ? lookAtArmature(hands) : notes.looks;
  hands.do({ type: 'armature.place' });
  const again: Notes = {
    ...notes,
    looks,
    spaced: tests.includes('spaced') ? spacedTest(hands, chalked) : notes.spaced,
    neighbour: tests.includes('neighbour') ? neighbourTest(hands, chalked) : notes.neighbour,
    strip: tests.includes('strip') ? stripTest(hands) : notes.strip,
    gauges: [...notes.gauges, ...gauges],
    done: [...notes.done, { remedy, bar }],
  };
  hands.do({ type: 'armature.lift' });
  return tests.includes('millivolt') ? { ...again, drops: barDrops(hands, chalked) } : again;
}

function plateRemedy(found: readonly Finding[], notes: Notes): Done | null {
  const has = (...conditions: Condition[]) => found.some(({ condition }) => conditions.includes(condition));
  if (has('looseRivet') && !tried(notes, 'tightenRivets')) return { remedy: 'tightenRivets', bar: null };
  const leaks = has('bridgedBars', 'grounded', 'poorInsulation');
  return leaks && !tried(notes, 'cleanPlateInsulation')
    ? { remedy: 'cleanPlateInsulation', bar: null }
    : null;
}

function workPlate(hands: Hands, { remedy }: Done, notes: Notes): Notes {
  const { tests } = hands.job;
  bringForward(hands, 'brushPlate');
  hands.do({ type: 'remedy.do', remedy });
  const old = notes.looks.filter(({ place }) => !place.startsWith('plate:'));
  const looks = tests.includes('look') ? [...old, ...lookAtMat(hands, 'brushPlate')] : notes.looks;
  hands.do({ type: 'armature.place' });
  const holders = plateTests(hands);
  hands.do({ type: 'armature.lift' });
  const others = notes.megohms.filter((one) => one.part !== 'brushPlate');
  const megohms = tests.includes('megohm') ? [...others, ...megohmTest(hands, 'brushPlate')] : notes.megohms;
  return { ...notes, looks, holders, megohms, done: [...notes.done, { remedy, bar: null }] };
}
