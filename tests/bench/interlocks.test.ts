import { describe, expect, it } from 'vitest';
import { INTERLOCKS, type InterlockCode } from '../../src/bench/interlocks.ts';
import type { Mode } from '../../src/bench/port.ts';
import { BenchDriver, type JobOptions } from '../support/benchDriver.ts';
import { TOOL_MISDEEDS } from './toolMisdeeds.ts';

/** How one rule gets broken: everything before is good work, the last act or wait is not. */
interface Misdeed {
  readonly code: InterlockCode;
  readonly what: string;
  readonly job?: JobOptions;
  upTo(me: BenchDriver): unknown;
  misdeed(me: BenchDriver): unknown;
}

const on = (me: BenchDriver, at: 'low' | 'high') => me.placesArmature().switches(at);

const ACTS: readonly Misdeed[] = [
  {
    code: 'emptyCradle',
    what: 'switching on with nothing in the cradle',
    upTo: () => {},
    misdeed: (me) => me.switches('low'),
  },
  {
    code: 'liftedLive',
    what: 'lifting the armature out with the bench on',
    upTo: (me) => on(me, 'high'),
    misdeed: (me) => me.liftsArmature(),
  },
  {
    code: 'liveTip',
    what: 'taking a live lamp lead by its tip',
    upTo: (me) => on(me, 'low'),
    misdeed: (me) => me.takes('lamp.1', 'tip'),
  },
  {
    code: 'liveTip',
    what: 'switching to LOW with a lamp lead held by its tip',
    upTo: (me) => me.placesArmature().takes('lamp.1', 'tip'),
    misdeed: (me) => me.switches('low'),
  },
  {
    code: 'liveMetal',
    what: 'laying a hand on the armature while a live lamp probe touches the core',
    upTo: (me) => on(me, 'low').takes('lamp.1').touches('lamp.1', 'core'),
    misdeed: (me) => me.layHandOnArmature(),
  },
  {
    code: 'liveMetal',
    what: 'putting a live lamp probe on the shaft with a hand on the armature',
    upTo: (me) => on(me, 'low').layHandOnArmature().takes('lamp.1'),
    misdeed: (me) => me.touches('lamp.1', 'shaft'),
  },
  {
    code: 'liveMetal',
    what: 'turning the armature under a live lamp probe',
    upTo: (me) => on(me, 'low').takes('lamp.1').touches('lamp.1', 'shaft'),
    misdeed: (me) => me.turns(10),
  },
  {
    code: 'turnedUnderLamp',
    what: 'turning under a lamp probe, dead or not',
    upTo: (me) => me.placesArmature().takes('lamp.1').touches('lamp.1', 'shaft'),
    misdeed: (me) => me.turns(10),
  },
  {
    code: 'leadsMixed',
    what: 'a lamp probe on a bar on HIGH',
    upTo: (me) => on(me, 'high').takes('lamp.1'),
    misdeed: (me) => me.touches('lamp.1', `bar:${me.barNear(-90)}`),
  },
  {
    code: 'leadsMixed',
    what: 'an ammeter probe on a bar on LOW',
    upTo: (me) => on(me, 'low').takes('ammeter.1'),
    misdeed: (me) => me.touches('ammeter.1', `bar:${me.barNear(-90)}`),
  },
  {
    code: 'leadsMixed',
    what: 'one probe of each set',
    upTo: (me) =>
      on(me, 'high')
        .takes('ammeter.1')
        .touches('ammeter.1', `bar:${me.barNear(-90)}`)
        .takes('lamp.1'),
    misdeed: (me) => me.touches('lamp.1', 'shaft'),
  },
  {
    code: 'leadsMixed',
    what: 'switching to LOW with the ammeter probes still on the bars',
    upTo: (me) => on(me, 'high').setsProbesAt(-90, -60),
    misdeed: (me) => me.switches('low'),
  },
  {
    code: 'stripOnLow',
    what: 'the strip over the core on LOW',
    upTo: (me) => on(me, 'low').takesStrip(),
    misdeed: (me) => me.holdsStrip(180),
  },
  {
    code: 'lampNotProvedBefore',
    what: 'a lamp test with a lamp nobody has proved',
    upTo: (me) => on(me, 'low').takes('lamp.1').takes('lamp.2').touches('lamp.1', 'shaft'),
    misdeed: (me) => me.touches('lamp.2', `bar:${me.barNear(-90)}`),
  },
  {
    code: 'lampNotProvedBefore',
    what: 'tips put together too briefly to see the lamp light',
    upTo: (me) =>
      on(me, 'low')
        .takes('lamp.1')
        .takes('lamp.2')
        .touches('lamp.1', 'tip:lamp.2')
        .does({ type: 'lead.touch', lead: 'lamp.1', place: 'shaft' }, 20),
    misdeed: (me) => me.touches('lamp.2', `bar:${me.barNear(-90)}`),
  },
];

/** Rules that no guard can hold: they are broken by switching off, or by time. */
const UNGUARDED: readonly Misdeed[] = [
  {
    code: 'lampNotProvedAfter',
    what: 'switching off after a lamp test without proving the lamp again',
    upTo: (me) => {
      on(me, 'low').provesLamp().touches('lamp.1', 'shaft');
      me.touches('lamp.2', `bar:${me.barNear(-90)}`).hangsUp('lamp.1');
    },
    misdeed: (me) => me.switches('off'),
  },
  {
    code: 'leftOn',
    what: 'a minute on with nobody at the bench',
    upTo: (me) => on(me, 'high'),
    misdeed: (me) => me.waits(60_200),
  },
  {
    code: 'overheated',
    what: 'a shorted coil left cooking',
    job: { part: 'lap-24', faults: [{ kind: 'bridgedBars', bar: 0, ohm: 2e-4, by: 'copper' }] },
    upTo: (me) => on(me, 'high').takesStrip().holdsStrip(180),
    misdeed: (me) => me.waits(20 * 60_000),
  },
];

const MODES: readonly Mode[] = ['guided', 'practice', 'assessed'];
const codeOf = (code: InterlockCode) => INTERLOCKS.find((rule) => rule.code === code)!;

describe.each(ACTS)('$code: $what', ({ code, job, upTo, misdeed }) => {
  it('is refused in guided work, with the reason, and recorded', () => {
    const me = new BenchDriver({ ...job, mode: 'guided' });
    upTo(me);
    expect(me.everythingBroken).toEqual([]);
    const state = me.session.stateAt(me.atMs);
    misdeed(me);
    expect(me.refusal).not.toBeNull();
    expect(me.last.breaches.map((breach) => breach.sentence)).toContain(codeOf(code).sentence);
    expect(me.session.stateAt(me.atMs)).toEqual(state);
    expect(me.sees.stopped).toBeNull();
  });

  it.each(['practice', 'assessed'] as const)('is let happen in %s work and recorded', (mode) => {
    const me = new BenchDriver({ ...job, mode });
    upTo(me);
    expect(me.everythingBroken).toEqual([]);
    misdeed(me);
    expect(me.refusal).toBeNull();
    expect(me.broke).toContain(code);
    const critical = me.last.breaches.some((breach) => breach.critical);
    expect(me.sees.stopped !== null).toBe(critical);
    expect(me.sees.supply === 'isolated').toBe(critical);
    if (codeOf(code).critical) expect(me.sees.stopped?.sentence).toBe(codeOf(code).sentence);
  });
});

describe.each(UNGUARDED)('$code: $what', ({ code, job, upTo, misdeed }) => {
  it.each(MODES)('is recorded in %s work and refused in none', (mode) => {
    const me = new BenchDriver({ ...job, mode });
    upTo(me);
    expect(me.everythingBroken).toEqual([]);
    misdeed(me);
    expect(me.refusal).toBeNull();
    expect(me.everythingBroken).toContain(code);
    expect(me.sees.stopped).toBeNull();
  });
});

describe('placing the armature with the bench on', () => {
  it.each(['practice', 'assessed'] as const)('is a breach of its own in %s work', (mode) => {
    const me = new BenchDriver({ mode }).switches('low');
    expect(me.broke).toEqual(['emptyCradle']);
    me.placesArmature();
    expect(me.broke).toEqual(['placedLive']);
    expect(me.sees.stopped).toBeNull();
  });

  it('cannot come about in guided work, where an empty cradle is not switched on', () => {
    const me = new BenchDriver({ mode: 'guided' }).switches('high').placesArmature();
    expect(me.refusal).toBeNull();
    expect(me.everythingBroken).toEqual(['emptyCradle']);
  });
});

describe('an empty cradle kept on', () => {
  it.each(['practice', 'assessed'] as const)('trips the cut-out and stops the attempt in %s work', (mode) => {
    const me = new BenchDriver({ mode }).switches('high').waits(3 * 60_000);
    expect(me.hasBroken('emptyCradleTrip')).toBe(true);
    expect(me.sees.supply).toBe('isolated');
    expect(me.sees.stopped?.sentence).toBe(codeOf('emptyCradleTrip').sentence);
    me.switches('off');
    expect(me.refusal).toMatch(/stopped/);
  });
});

it('hands a job in with the bench still on: left on, and the used lamp not proved again', () => {
  const me = new BenchDriver({ mode: 'assessed' });
  on(me, 'low')
    .provesLamp()
    .touches('lamp.1', 'shaft')
    .touches('lamp.2', `bar:${me.barNear(-90)}`)
    .handsIn();
  expect(me.broke).toEqual(['lampNotProvedAfter', 'leftOn']);
});

it('every rule of the list is broken here or among the tools', () => {
  const tried = [...ACTS, ...UNGUARDED, ...TOOL_MISDEEDS].map(({ code }) => code);
  const elsewhere = ['placedLive', 'emptyCradleTrip'];
  expect([...new Set([...tried, ...elsewhere])].sort()).toEqual(INTERLOCKS.map(({ code }) => code).sort());
});

describe('good work breaks no rule', () => {
  it.each(MODES)('a whole armature tested by the book in %s work', (mode) => {
    const me = new BenchDriver({ mode });
    me.placesArmature().switches('high').setsRange(15).setsProbesAt(-52, -38);
    for (let bar = 0; bar < 23; bar += 1) me.waits(4000).turnsOneBar();
    me.hangsUp('ammeter.1').hangsUp('ammeter.2').takesStrip();
    for (let bar = 0; bar < 23; bar += 1) me.holdsStrip(180).turnsOneBar();
    me.hangsStrip().switches('off').switches('low').provesLamp().touches('lamp.1', 'shaft');
    for (const angle of [-150, -120, -90, -60, -30]) {
      me.touches('lamp.2', `bar:${me.barNear(angle)}`).waits(600);
    }
    me.liftsTip('lamp.1').liftsTip('lamp.2').provesLamp().hangsUp('lamp.1').hangsUp('lamp.2');
    me.switches('off').liftsArmature().handsIn();
    expect(me.refusal).toBeNull();
    expect(me.everythingBroken).toEqual([]);
    expect(me.session.log.every((entry) => entry.outcome.kind === 'done')).toBe(true);
  });
});
