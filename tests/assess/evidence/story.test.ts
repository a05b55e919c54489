import { describe, expect, it } from 'vitest';
import { armatureStory } from '../../../src/assess/evidence/story/armature.ts';
import type { EvidenceStory } from '../../../src/assess/evidence/story/shape.ts';
import { filmOf } from '../../../src/assess/film.ts';
import {
  movedWords,
  nextWords,
  readingWords,
} from '../../../src/screens/apprentice/debrief/evidence/evidenceWords.ts';
import { expertAttempt, library, scenarioWith } from '../attempts.ts';
import { perform, stepsOf } from '../script.ts';

/** The expert chalks bar 3, so the joint at bar 8 is chalk + 5. */
const job = scenarioWith([{ kind: 'riserJoint', bar: 8, form: 'bar', ohm: 0.03 }], {
  tests: ['neighbour', 'ground'],
});
const steps = stepsOf(expertAttempt(job).attempt);
const whole = armatureStory(filmOf(perform(job, steps), library));
const calling = {
  part: 'armature',
  bars: whole.bars,
  chalkedBar: whole.chalkedBar,
  vocabulary: 'british',
} as const;

function story(of: readonly { readonly action: { readonly type: string } }[]): EvidenceStory {
  return armatureStory(filmOf(perform(job, of as typeof steps), library));
}

describe('the story of an expert’s readings', () => {
  it('ends with one thing possible, at one place, and the verdict proven', () => {
    expect(whole.judged).toMatchObject({ judgement: 'proven', missed: 0 });
    expect(whole.kinds[0]).toMatchObject({ what: 'badRiserJoint', places: [23, 1] });
    expect(whole.steps.at(-1)!.open).toBe(1);
    expect(whole.openBefore).toBeGreaterThan(80);
    expect(whole.next).toBeNull();
    expect(whole.endedByRemedy).toBe(false);
  });

  it('has a chance of every kind before the first reading and after each, none above one', () => {
    for (const { chances } of whole.kinds) {
      expect(chances).toHaveLength(whole.steps.length + 1);
      for (const chance of chances) expect(chance).toBeGreaterThanOrEqual(0);
      expect(Math.max(...chances)).toBeLessThanOrEqual(1);
    }
  });

  it('rules each possibility out no more often than it was there, and counts what is left', () => {
    let open = whole.openBefore;
    for (const step of whole.steps) {
      expect(step.open).toBeGreaterThanOrEqual(open - step.ruledOut.length);
      for (const { from, to } of step.ruledOut) expect(to).toBeLessThan(from);
      open = step.open;
    }
  });

  it('names the reading across the bad joint as the one that settled most', () => {
    const best = whole.steps.reduce((most, step) => (step.settled > most.settled ? step : most));
    expect(best.reading).toMatchObject({ kind: 'meter' });
    if (best.reading.kind === 'meter') expect(best.reading.bars).toContain(8);
    expect(readingWords(best, calling)).toMatch(/^Ammeter, chalk \+ \d and chalk \+ \d: [\d.]+ A$/);
    const raised = movedWords(best.raised, calling);
    expect(raised).toContain('bad riser joint at chalk + 5');
  });
});

describe('the story of a job broken off', () => {
  const handIn = steps.filter(({ action: { type } }) => type === 'verdict.write' || type === 'job.handIn');
  const lamp = steps.findIndex(({ action }) => action.type === 'lead.take' && action.lead.startsWith('lamp'));

  it('sends a learner who left the lamp in its holster to the lamp', () => {
    const { next } = story([...steps.slice(0, lamp), ...handIn]);
    expect(next).toMatchObject({ test: 'ground', bars: null });
    expect(nextWords(next!, calling)).toMatch(/^Put the lamp from the shaft to any (bar|segment)/);
    expect(next!.share).toBeGreaterThan(0.2);
  });

  it('is told without a verdict as well', () => {
    const silent = story(steps.filter(({ action: { type } }) => type !== 'verdict.write').slice(0, 20));
    expect(silent.judged).toBeNull();
    expect(silent.openBefore).toBe(whole.openBefore);
    expect(silent.next).not.toBeNull();
  });
});

describe('readings of the tools of the rail', () => {
  const step = { ampere: null, ruledOut: [], raised: [], open: 1, settled: 0 };
  const from = 'instrument' as const;

  it('are told with where they were taken', () => {
    const megohm = { kind: 'megohm', entry: 1, places: ['shaft', 'bar:8'], volt: 250, from } as const;
    const told = (megohms: number | 'over') =>
      readingWords({ ...step, reading: { ...megohm, megohms } }, calling);
    expect(told(0.18)).toBe('Insulation tester at 250 V, shaft and chalk + 5: 0.18 MΩ');
    expect(told('over')).toMatch(/: beyond the scale$/);
    const drop = { kind: 'drop', entry: 1, bars: [8, 9], from } as const;
    const dropped = (feed: readonly [number, number], millivolts: number) =>
      readingWords({ ...step, reading: { ...drop, feed, millivolts } }, calling);
    expect(dropped([9, 8], 2.61)).toBe('Millivolt drop, chalk + 5 and chalk + 6: 2.61 mV');
    expect(dropped([3, 12], 200)).toBe(
      'Millivolt drop, chalk + 5 and chalk + 6, fed at chalk and chalk + 9: beyond the scale',
    );
  });

  it('are asked for where they would tell most', () => {
    const next = { bars: null, angleDeg: null, share: 0.4 };
    expect(nextWords({ ...next, test: 'megohm' }, calling)).toMatch(
      /^Put the insulation tester from the shaft/,
    );
    expect(nextWords({ ...next, test: 'millivolt', bars: [8, 9] }, calling)).toBe(
      'Feed chalk + 5 and chalk + 6 and read the drop between them',
    );
  });
});
