import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import type { Action } from '../../src/bench/action.ts';
import type { Condition, Disposition, FoundPlace } from '../../src/bench/paper.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { expertAttempt, library, scenarioWith } from './attempts.ts';
import { perform, refusals, type Step, step, stepsOf } from './script.ts';

/**
 * The bad habits of real workshops, each written into an expert's script: it must lose the marks it should and no
 * others (common practice, no source).
 */
const sound = scenarioWith([]);
const soundSteps = stepsOf(expertAttempt(sound).attempt);

function lost(scenario: Scenario, steps: readonly Step[]) {
  const attempt = perform(scenario, steps);
  const { marks, stoppedBy } = assess(attempt, library);
  const short = marks.filter(({ earned, of }) => earned < of).map(({ id }) => id);
  return { lost: short.sort(), stoppedBy: stoppedBy?.breach.interlock ?? null, refused: refusals(attempt) };
}
const only = (...ids: string[]) => ({ lost: ids.sort(), stoppedBy: null, refused: [] });

type Test = (action: Action) => boolean;
const is =
  (type: Action['type'], more: Record<string, unknown> = {}): Test =>
  (action) =>
    action.type === type &&
    Object.entries(more).every(
      ([key, value]) => (action as unknown as Record<string, unknown>)[key] === value,
    );

function indexOf(steps: readonly Step[], test: Test, nth = 0): number {
  const found = steps.flatMap(({ action }, at) => (test(action) ? [at] : []));
  const at = found.at(nth);
  if (at === undefined) throw new Error('the script has no such act');
  return at;
}
const insert = (steps: readonly Step[], at: number, ...more: Step[]) => [
  ...steps.slice(0, at),
  ...more,
  ...steps.slice(at),
];
const verdictWith = (
  steps: readonly Step[],
  condition: Condition,
  place: FoundPlace,
  disposition: Disposition,
): Step[] =>
  steps.map((one) =>
    one.action.type === 'verdict.write'
      ? {
          ...one,
          action: {
            ...one.action,
            verdict: { ...one.action.verdict, findings: [{ condition, place }], disposition },
          },
        }
      : one,
  );
const somewhere: FoundPlace = { kind: 'somewhere' };

/** Acts from the strip's taking to its hanging. */
const stripFrom = indexOf(soundSteps, is('strip.take'));
const stripTo = indexOf(soundSteps, is('strip.hang'));

describe('a bad habit', () => {
  it('none at all loses nothing', () => {
    expect(lost(sound, soundSteps)).toEqual(only());
  });

  it('1: the lamp never proved', () => {
    const proofs = soundSteps.flatMap(({ action }, at) =>
      is('lead.touch', { place: 'tip:lamp.2' })(action) ? [at, at + 1] : [],
    );
    expect(
      lost(
        sound,
        soundSteps.filter((_, at) => !proofs.includes(at)),
      ),
    ).toEqual(only('lampProved', 'proven'));
  });

  it('1: the lamp proved before but not after', () => {
    const at = indexOf(soundSteps, is('lead.touch', { place: 'tip:lamp.2' }), 1);
    expect(
      lost(
        sound,
        soundSteps.filter((_, nth) => nth !== at && nth !== at + 1),
      ),
    ).toEqual(only('lampProved', 'proven'));
  });

  it('2: half the commutator probed with the lamp', () => {
    const touches = soundSteps.filter(
      ({ action }) => action.type === 'lead.touch' && action.lead === 'lamp.2',
    );
    const dropped = new Set(touches.slice(11));
    const fewer = soundSteps.filter((one) => !dropped.has(one));
    expect(lost(sound, fewer).lost).toEqual(['groundPass', 'supported']);
  });

  it('2: half the commutator read with the ammeter', () => {
    const from = indexOf(soundSteps, (a) => a.type === 'sheet.write' && a.line.test === 'neighbour', 11);
    const to = indexOf(soundSteps, (a) => a.type === 'sheet.write' && a.line.test === 'neighbour', -1);
    const turns = soundSteps.slice(from, to).filter(({ action }) => action.type === 'armature.turn');
    const back = step({ type: 'armature.turn', byDeg: (-360 / 23) * turns.length });
    expect(lost(sound, [...soundSteps.slice(0, from), back, ...soundSteps.slice(to + 1)])).toEqual(
      only('neighbourPass', 'supported'),
    );
  });

  it('2: readings taken before the needle stood still', () => {
    const hasty = soundSteps.map((one) =>
      one.action.type === 'sheet.write' && one.action.line.test === 'neighbour'
        ? { ...one, pauseMs: 100 }
        : one,
    );
    const result = lost(sound, hasty);
    expect(result.lost).toContain('neighbourPass');
    expect(result.lost).not.toContain('spacedPass');
  });

  it('3: the strip used on LOW', () => {
    const low = soundSteps.map((one, at) =>
      at === stripFrom - 1 ? step({ type: 'selector.turn', to: 'low' }) : one,
    );
    expect(lost(sound, low)).toEqual(only('stripOnHigh', 'stripPass', 'stripClear', 'supported'));
  });

  it('4: the strip not taken through a full turn', () => {
    const turns = soundSteps
      .slice(stripFrom, stripTo)
      .filter(({ action }) => action.type === 'armature.turn');
    const dropped = new Set(turns.filter((_, nth) => nth % 24 > 12));
    expect(
      lost(
        sound,
        soundSteps.filter((one) => !dropped.has(one)),
      ),
    ).toEqual(only('stripPass', 'supported'));
  });

  it('4: the strip not taken over the whole arc', () => {
    const nearOnly = soundSteps.map((one) =>
      one.action.type === 'strip.hold' ? { ...one, action: { ...one.action, angleDeg: 240 } } : one,
    );
    expect(lost(sound, nearOnly).lost).toEqual(['stripPass', 'supported']);
  });

  it('4: the strip held too high to feel anything', () => {
    const high = soundSteps.map((one) =>
      one.action.type === 'strip.hold' ? { ...one, action: { ...one.action, heightMm: 5 } } : one,
    );
    expect(lost(sound, high)).toEqual(only('stripPass', 'supported'));
  });

  it('5: a pull next to a jaw taken for a short', () => {
    const beside = insert(
      soundSteps,
      stripTo - 1,
      step({ type: 'strip.hold', angleDeg: 70, heightMm: 0.5 }),
      step({ type: 'sheet.write', line: { test: 'strip', count: null, strip: 'pulled' } }),
    );
    expect(lost(sound, beside)).toEqual(only('stripClear'));
  });

  it('6: lead sets mixed up', () => {
    const at = indexOf(soundSteps, is('lead.take', { lead: 'ammeter.1' })) + 1;
    const mixed = insert(
      soundSteps,
      at,
      step({ type: 'lead.take', lead: 'lamp.1', grip: 'handle' }),
      step({ type: 'lead.touch', lead: 'lamp.1', place: 'core' }),
      step({ type: 'lead.holster', lead: 'lamp.1' }),
    );
    expect(lost(sound, mixed)).toEqual(only('leadsRight'));
  });

  it('7: a lamp tip held stops the attempt', () => {
    const tip = soundSteps.map((one) =>
      is('lead.take', { lead: 'lamp.1' })(one.action)
        ? step({ type: 'lead.take', lead: 'lamp.1', grip: 'tip' })
        : one,
    );
    const result = lost(sound, tip);
    expect(result.stoppedBy).toBe('liveTip');
    expect(result.lost).toContain('safeHands');
  });

  it('8: a hand on the part under a live probe stops the attempt', () => {
    const at = indexOf(soundSteps, is('lead.touch', { lead: 'lamp.1', place: 'shaft' }));
    const hand = insert(
      soundSteps,
      at + 1,
      step({ type: 'lead.holster', lead: 'lamp.2' }),
      step({ type: 'armature.hold' }),
    );
    const result = lost(sound, hand);
    expect(result.stoppedBy).toBe('liveMetal');
    expect(result.lost).toContain('safeHands');
  });

  it('9: the bench left humming', () => {
    const at = indexOf(soundSteps, is('lead.take', { lead: 'ammeter.1' }));
    const slow = soundSteps.map((one, nth) => (nth === at ? { ...one, pauseMs: 70_000 } : one));
    expect(lost(sound, slow)).toEqual(only('notLeftOn'));
  });

  it('10: the armature lifted out live stops the attempt', () => {
    const at = indexOf(soundSteps, is('selector.turn', { to: 'off' }), -1);
    const result = lost(
      sound,
      soundSteps.filter((_, nth) => nth !== at),
    );
    expect(result.stoppedBy).toBe('liftedLive');
    expect(result.lost).toContain('placedOff');
  });

  it('11: switched on with an empty cradle', () => {
    const at = indexOf(soundSteps, is('armature.place'));
    const empty = insert(
      soundSteps,
      at,
      step({ type: 'selector.turn', to: 'high' }),
      step({ type: 'selector.turn', to: 'off' }, 2000),
    );
    expect(lost(sound, empty)).toEqual(only('cradleFilled'));
  });

  it('11: an empty cradle kept on until it trips stops the attempt', () => {
    const at = indexOf(soundSteps, is('armature.place'));
    const empty = insert(
      soundSteps,
      at,
      step({ type: 'selector.turn', to: 'high' }),
      step({ type: 'selector.turn', to: 'off' }, 150_000),
    );
    const result = lost(sound, empty);
    expect(result.stoppedBy).toBe('emptyCradleTrip');
    expect(result.lost).toEqual(expect.arrayContaining(['cradleFilled', 'notLeftOn']));
  });

  it('the armature laid in live', () => {
    const at = indexOf(soundSteps, is('armature.place'));
    const live = soundSteps.filter(
      (_, nth) => nth !== indexOf(soundSteps, is('selector.turn', { to: 'high' })),
    );
    const result = lost(sound, insert(live, at, step({ type: 'selector.turn', to: 'high' })));
    expect(result.lost).toEqual(['cradleFilled', 'placedOff']);
  });

  it('the part not looked at until power was on', () => {
    const looks = soundSteps.filter(({ action }) => action.type === 'lens.look' && action.place === 'core');
    const without = soundSteps.filter(({ action }) => action.type !== 'lens.look');
    const at = indexOf(without, is('job.handIn'));
    expect(lost(sound, insert(without, at - 1, ...looks)).lost).toEqual(['lookedFirst']);
  });

  it('turned with a lamp probe on the part, even with the growler off', () => {
    const at = indexOf(soundSteps, is('strip.take')) - 1;
    const turned = insert(
      soundSteps,
      at,
      step({ type: 'lead.take', lead: 'lamp.1', grip: 'handle' }),
      step({ type: 'lead.touch', lead: 'lamp.1', place: 'core' }),
      step({ type: 'armature.turn', byDeg: 10 }),
      step({ type: 'lead.holster', lead: 'lamp.1' }),
    );
    expect(lost(sound, turned)).toEqual(only('probesOff'));
  });

  it('nothing seen to before power', () => {
    const hasty = soundSteps.filter(({ action }) => action.type !== 'prepare.check');
    expect(lost(sound, hasty)).toEqual(only('prepared'));
  });

  it('the verdict written before the sheet', () => {
    const strip = indexOf(soundSteps, (a) => a.type === 'sheet.write' && a.line.test === 'strip');
    const late = soundSteps.filter((_, nth) => nth !== strip);
    expect(lost(sound, insert(late, late.length - 1, soundSteps[strip]!))).toEqual(only('recordedFirst'));
  });

  it('nothing chalked', () => {
    expect(
      lost(
        sound,
        soundSteps.filter(({ action }) => action.type !== 'chalk.mark'),
      ),
    ).toEqual(only('chalkedFirst'));
  });

  it('the needle left against its stop', () => {
    const at = indexOf(soundSteps, (a) => a.type === 'range.turn' && a.to !== 100);
    const low = insert(soundSteps, at + 1, step({ type: 'range.turn', to: 3 }));
    expect(lost(sound, low).lost).toContain('needleSpared');
  });

  it('one spacing used without looking for the largest', () => {
    const from = indexOf(soundSteps, is('lead.touch', { lead: 'ammeter.2' }));
    const to = indexOf(soundSteps, is('lead.lift', { lead: 'ammeter.1' }));
    expect(
      lost(sound, [...soundSteps.slice(0, from), ...soundSteps.slice(to).filter((_, nth) => nth !== 1)]),
    ).toEqual(only('spacedLargest'));
  });
});

describe('a bad habit of judgement', () => {
  const carbon: ArmatureFault = { kind: 'bridgedBars', bar: 7, ohm: 0.02, by: 'carbon' };
  const bridged = scenarioWith([carbon], { armature: 'lap-24' });
  const expert = expertAttempt(bridged);
  const steps = stepsOf(expert.attempt);

  it('12: a shorted armature left cooking', () => {
    const hard = scenarioWith(
      [{ ...carbon, ohm: 0.0005, by: 'copper' }],
      { armature: 'lap-24' },
      { startRotationDeg: 90 },
    );
    const script = stepsOf(expertAttempt(hard).attempt);
    const at = indexOf(script, is('strip.take'));
    // Bar 7 to 8 in full flux: rotation 90 at the start, two passes and half a turn later at 300.
    const cooked = insert(
      script,
      at,
      step({ type: 'armature.turn', byDeg: 150 }),
      step({ type: 'armature.hold' }),
      step({ type: 'armature.release' }, 250_000),
      step({ type: 'armature.turn', byDeg: -150 }),
    );
    expect(lost(hard, cooked)).toEqual(only('keptCool'));
  });

  it('14: an armature condemned for a bridge of carbon', () => {
    const place: FoundPlace = { kind: 'pair', count: 4 };
    expect(lost(bridged, verdictWith(steps, 'bridgedBars', place, 'winder'))).toEqual(only('disposition'));
  });

  it('15: an armature passed because the lamp stayed dark', () => {
    const from = indexOf(steps, is('selector.turn', { to: 'low' }));
    const to = indexOf(steps, (a) => a.type === 'sheet.write' && a.line.test === 'ground');
    const before = steps.slice(0, indexOf(steps, is('armature.place')) + 1);
    const turned = steps.slice(before.length, from).filter(({ action }) => action.type === 'armature.turn');
    const round = step({ type: 'armature.turn', byDeg: (-360 / 24) * turned.length });
    const lampOnly = [...before, round, ...steps.slice(from, to + 1), ...steps.slice(-3)];
    const result = lost(bridged, verdictWith(lampOnly, 'sound', somewhere, 'service'));
    expect(result.refused).toEqual([]);
    expect(result.lost).toEqual(expect.arrayContaining(['condition', 'disposition', 'place', 'supported']));
    expect(result.lost).not.toContain('groundPass');
  });

  it('16: a low reading called open without the strip', () => {
    const from = indexOf(steps, is('strip.take')) - 1;
    const to = indexOf(steps, (a) => a.type === 'sheet.write' && a.line.test === 'strip');
    const noStrip = [...steps.slice(0, from), ...steps.slice(to + 1)];
    const place: FoundPlace = { kind: 'pair', count: 4 };
    expect(lost(bridged, verdictWith(noStrip, 'openCoil', place, 'winder'))).toEqual(
      only(
        'condition',
        'disposition',
        'proven',
        'recordedFirst',
        'stripClear',
        'stripOnHigh',
        'stripPass',
        'supported',
      ),
    );
  });
});

describe('guided work', () => {
  it('refuses the dangerous act, so that only half the mark is lost and the attempt goes on', () => {
    const guided = scenarioWith([], { mode: 'guided' });
    const at = indexOf(soundSteps, is('lead.touch', { lead: 'lamp.1', place: 'shaft' }));
    const hand = insert(
      soundSteps,
      at + 1,
      step({ type: 'lead.holster', lead: 'lamp.2' }),
      step({ type: 'armature.hold' }),
      step({ type: 'lead.take', lead: 'lamp.2', grip: 'handle' }),
    );
    const { marks, stoppedBy } = assess(perform(guided, hand), library);
    expect(stoppedBy).toBeNull();
    expect(marks.filter(({ earned, of }) => earned < of).map(({ id, earned }) => [id, earned])).toEqual([
      ['safeHands', 5],
    ]);
  });
});
