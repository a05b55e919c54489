import { describe, expect, it } from 'vitest';
import { brokenIn } from '../../src/attempt/broken.ts';
import { ATTEMPT_FORMAT, ATTEMPT_VERSION, type Attempt, type Entry } from '../../src/attempt/entry.ts';
import { replay } from '../../src/attempt/replay.ts';
import { BenchDriver, type JobOptions, job, PARTS } from '../support/benchDriver.ts';

const JOB: JobOptions = { faults: [{ kind: 'groundedBar', bar: 2, ohm: 0.5 }] };

function recorded(options: JobOptions = JOB): Attempt {
  const me = new BenchDriver(options).placesArmature().switches('high').setsRange(15).setsProbesAt(-45, -30);
  me.waits(4000)
    .turnsOneBar()
    .waits(4000)
    .turnsOneBar()
    .hangsUp('ammeter.1')
    .hangsUp('ammeter.2')
    .waits(70_000);
  me.switches('off').switches('low').provesLamp().touches('lamp.1', 'shaft');
  me.touches('lamp.2', `bar:${me.barNear(-90)}`)
    .waits(600)
    .liftsTip('lamp.2');
  me.hangsUp('lamp.1').switches('off').handsIn();
  return {
    format: ATTEMPT_FORMAT,
    version: ATTEMPT_VERSION,
    id: 'a-1',
    mode: 'practice',
    learner: 'A learner',
    startedAt: '2031-05-06T08:30:00Z',
    scenario: job(options),
    entries: me.session.log,
    endMs: me.atMs,
  };
}

/** A record altered in one entry. */
function altered(n: number, change: (entry: Entry) => Entry): Attempt {
  const attempt = recorded();
  return { ...attempt, entries: attempt.entries.map((entry) => (entry.n === n ? change(entry) : entry)) };
}

function divergence(attempt: Attempt) {
  const again = replay(attempt, PARTS);
  return again.agreed ? null : again.firstDivergence;
}

const attempt = recorded();
const turn = attempt.entries.findIndex((entry) => entry.action.type === 'armature.turn');

describe('a replay', () => {
  it('comes to the same log', () => {
    const again = replay(attempt, PARTS);
    expect(again.agreed && again.session.log).toEqual(attempt.entries);
  });

  it('names the entry and the value where a shown reading was altered', () => {
    const found = divergence(
      altered(turn, (entry) => ({
        ...entry,
        before: { ...entry.before, needle: { ...entry.before.needle, deflection: 0.25 } },
      })),
    );
    expect(found).toEqual({
      n: turn,
      what: 'before.needle.deflection',
      expected: 0.25,
      got: expect.any(Number),
    });
  });

  it('forgives one step of what an eye tells apart and no more', () => {
    const shifted = (by: number) =>
      divergence(
        altered(turn, ({ before, ...entry }) => ({
          ...entry,
          before: { ...before, needle: { ...before.needle, deflection: before.needle.deflection + by } },
        })),
      );
    expect(shifted(1 / 400)).toBeNull();
    expect(shifted(2 / 400)?.what).toBe('before.needle.deflection');
  });

  it('finds an act that was changed, left out or put in, at the latest where its effect was seen', () => {
    const changed = altered(turn, (entry) => ({ ...entry, action: { type: 'armature.turn', byDeg: 40 } }));
    expect(divergence(changed)?.n).toBe(turn + 1);
    const without = attempt.entries.filter((entry) => entry.n !== turn).map((entry, n) => ({ ...entry, n }));
    expect(divergence({ ...attempt, entries: without })).not.toBeNull();
  });

  it('finds a breach wiped out of the record', () => {
    const last = attempt.entries.findIndex(({ outcome }) => outcome.breaches.length > 0);
    const found = divergence(
      altered(last, (entry) => ({ ...entry, outcome: { kind: 'done', breaches: [] } })),
    );
    expect(found).toEqual({ n: last, what: 'outcome.codes', expected: '', got: 'lampNotProvedAfter' });
  });

  it('finds what came about by itself wiped out of the record', () => {
    const idle = attempt.entries.findIndex((entry) => entry.since !== undefined);
    const found = divergence(altered(idle, ({ since: _, ...entry }) => entry));
    expect(found?.n).toBe(idle);
    expect(found?.what).toMatch(/^since\.0/);
  });

  it('finds another fault, another seed or another mode behind the same acts', () => {
    expect(divergence({ ...attempt, scenario: job({}) })).not.toBeNull();
    expect(divergence({ ...attempt, scenario: job({ ...JOB, seed: 8 }) })).not.toBeNull();
    const careless = new BenchDriver({ mode: 'practice' }).switches('high');
    const practice = { ...attempt, scenario: job({}), entries: careless.session.log };
    expect(divergence({ ...practice, mode: 'guided' })?.what).toBe('outcome.kind');
  });
});

describe('the breaches of a log', () => {
  it('stand in the order of time, each with the act that led to it', () => {
    const broken = brokenIn(attempt.entries);
    expect(broken.map(({ breach }) => breach.interlock)).toEqual(['leftOn', 'lampNotProvedAfter']);
    const [left, unproved] = broken;
    expect(attempt.entries[left!.entry]!.action).toEqual({ type: 'lead.holster', lead: 'ammeter.2' });
    expect(attempt.entries[unproved!.entry]!.action).toEqual({ type: 'selector.turn', to: 'off' });
    expect(left!.atMs).toBeLessThan(unproved!.atMs);
  });

  it('include what came about after the last act', () => {
    const me = new BenchDriver().switches('high').waits(200_000);
    const broken = brokenIn(me.session.log, me.session.sinceLastAct(me.atMs));
    expect(broken.map(({ breach, entry }) => [breach.interlock, entry])).toEqual([
      ['emptyCradle', 0],
      ['leftOn', 0],
      ['overheated', 0],
      ['emptyCradleTrip', 0],
    ]);
  });
});
