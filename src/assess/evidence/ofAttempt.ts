import type { Verdict } from '../../bench/paper.ts';
import { MAINS } from '../../engine/drive.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { acts, type Film } from '../film.ts';
import { weighReadings } from './follow.ts';
import { type Gathered, gatherReadings, readingsFrom } from './gather.ts';
import { type JudgedVerdict, judge } from './judge.ts';
import { remembered } from './memory.ts';
import { createEvidence, type EvidenceModel } from './model.ts';
import type { Posterior } from './posterior.ts';
import type { Reading, Source } from './reading.ts';

/** Models remembered: what one has worked out serves every attempt at the same type of part. */
const MODELS = 4;
const models = new Map<string, { readonly model: EvidenceModel; readonly before: Posterior }>();

/** The evidence model of an attempt's armature, with the probabilities before anything is read. */
export function evidenceOf({ design, scenario: { public: card } }: Pick<Film, 'design' | 'scenario'>): {
  readonly model: EvidenceModel;
  readonly before: Posterior;
} {
  const { mains, tests } = card;
  return remembered(models, JSON.stringify([design, mains, tests]), MODELS, () => {
    const model = createEvidence({ design, mains, tests });
    return { model, before: weighReadings(model, []) };
  });
}

/** The last verdict on the armature with the readings it can rest on. */
export interface Rested {
  readonly entry: number;
  readonly verdict: Verdict;
  /** Bar the chalk was on when it was written. */
  readonly chalkedBar: number | null;
  readonly from: Source;
  readonly gathered: Gathered;
  readonly readings: readonly Reading[];
}

/** Assessed work stands on what was written, practice on what the instruments showed. Null without a verdict. */
export function restedOf(film: Film): Rested | null {
  const last = acts(film, 'verdict.write').findLast(({ action }) => action.verdict.part === 'armature');
  if (last === undefined) return null;
  const gathered = gatherReadings(film);
  const from = film.scenario.public.mode === 'assessed' ? 'sheet' : 'instrument';
  const readings = readingsFrom(gathered, from).filter(({ entry }) => entry < last.n);
  const { chalkedBar } = film.stretches.findLast(({ since }) => since < last.n)!.seen;
  return { entry: last.n, verdict: last.action.verdict, chalkedBar, from, gathered, readings };
}
void MAINS; 
export function judgeRested(film: Film, rested: Rested, faults: readonly ArmatureFault[] = film.scenario.hidden.armature.faults): JudgedVerdict {
  const { model, before } = evidenceOf(film);
  const after = weighReadings(model, rested.readings);
  return judge(after, before, rested.verdict, { faults, chalkedBar: rested.chalkedBar });
}
