import { describe, expect, it } from 'vitest';
import type { Action } from '../../src/bench/action.ts';
import { barAngleDeg, canReach } from '../../src/bench/geometry.ts';
import { BenchDriver } from '../support/benchDriver.ts';

const near = (me: BenchDriver) => `bar:${me.barNear(-90)}` as const;
const far = (me: BenchDriver) => `bar:${me.barNear(90)}` as const;

/** What hands cannot do: how one gets there, the act, and a word of the reason. */
const IMPOSSIBLE: readonly [string, (me: BenchDriver) => unknown, (me: BenchDriver) => Action, RegExp][] = [
  ['a third lead', (me) => me.takes('lamp.1').takes('lamp.2'), () => take('ammeter.1'), /hands are full/],
  [
    'the selector with both hands full',
    (me) => me.takes('lamp.1').takes('lamp.2'),
    () => low,
    /hands are full/,
  ],
  [
    'the strip with both hands full',
    (me) => me.takes('lamp.1').takes('ammeter.1'),
    () => ({ type: 'strip.take' }),
    /hands are full/,
  ],
  [
    'turning with both hands full',
    (me) => me.placesArmature().takes('lamp.1').takes('lamp.2'),
    () => turn,
    /hands are full/,
  ],
  ['turning an armature on the mat', () => {}, () => turn, /not in the cradle/],
  ['touching an armature on the mat', (me) => me.takes('lamp.1'), () => touch('shaft'), /not in the cradle/],
  ['touching with a lead in its holster', (me) => me.placesArmature(), () => touch('shaft'), /into a hand/],
  [
    'a bar round the far side',
    (me) => me.placesArmature().takes('lamp.1'),
    (me) => touch(far(me)),
    /within reach/,
  ],
  [
    'chalking a bar round the far side',
    (me) => me.placesArmature(),
    (me) => ({ type: 'chalk.mark', bar: me.barNear(90) }),
    /within reach/,
  ],
  [
    'a lens on a bar round the far side',
    (me) => me.placesArmature(),
    (me) => ({ type: 'lens.look', place: far(me) }),
    /within reach/,
  ],
  [
    'a bar the commutator does not have',
    (me) => me.placesArmature().takes('lamp.1'),
    () => touch('bar:23'),
    /no such bar/,
  ],
  [
    'a field terminal on a bench with an armature only',
    (me) => me.placesArmature().takes('lamp.1'),
    () => touch('field:case'),
    /on this bench/,
  ],
  ['the tip of a lead in its holster', (me) => me.takes('lamp.1'), () => touch('tip:lamp.2'), /holster/],
  ['the strip over an empty cradle', (me) => me.takesStrip(), () => strip(180), /not in the cradle/],
  ['the strip down between the jaws', (me) => me.placesArmature().takesStrip(), () => strip(40), /jaws/],
  ['the strip on the iron', (me) => me.placesArmature().takesStrip(), () => strip(180, 0), /above the core/],
  [
    'a lamp lead in the stand',
    (me) => me.placesArmature().takes('lamp.1').touches('lamp.1', near(me)),
    () => ({ type: 'lead.clamp', lead: 'lamp.1' }),
    /ammeter leads only/,
  ],
  [
    'the stand with a tip on nothing',
    (me) => me.placesArmature().takes('ammeter.1'),
    () => ({ type: 'lead.clamp', lead: 'ammeter.1' }),
    /commutator first/,
  ],
  ['laying in a second armature', (me) => me.placesArmature(), () => ({ type: 'armature.place' }), /already/],
  ['anything after handing in', (me) => me.handsIn(), () => ({ type: 'armature.place' }), /handed in/],
  [
    'a turn by no number',
    (me) => me.placesArmature(),
    () => ({ type: 'armature.turn', byDeg: Number.NaN }),
    /turned/,
  ],
];

const low: Action = { type: 'selector.turn', to: 'low' };
const turn: Action = { type: 'armature.turn', byDeg: 10 };
const take = (lead: 'ammeter.1'): Action => ({ type: 'lead.take', lead, grip: 'handle' });
const touch = (place: Extract<Action, { type: 'lead.touch' }>['place']): Action => ({
  type: 'lead.touch',
  lead: 'lamp.1',
  place,
});
const strip = (angleDeg: number, heightMm = 0.5): Action => ({ type: 'strip.hold', angleDeg, heightMm });

describe.each(['guided', 'practice', 'assessed'] as const)('in %s work hands cannot manage', (mode) => {
  it.each(IMPOSSIBLE)('%s', (_, before, act, reason) => {
    const me = new BenchDriver({ mode });
    before(me);
    expect(me.refusal).toBeNull();
    const state = me.session.stateAt(me.atMs);
    me.does(act(me));
    expect(me.refusal).toMatch(reason);
    expect(me.refusal).toMatch(/^[A-Z].*\.$/);
    expect(me.broke).toEqual([]);
    expect(me.session.stateAt(me.atMs)).toEqual(state);
    expect(me.session.log.at(-1)?.outcome.kind).toBe('refused');
  });
});

describe('two hands', () => {
  it('hold both ammeter leads in one and turn with the other', () => {
    const me = new BenchDriver().placesArmature().takes('ammeter.1').takes('ammeter.2');
    expect(me.sees.hands.map((hand) => hand.holds)).toEqual(['bothAmmeterLeads', 'nothing']);
    me.touches('ammeter.1', near(me))
      .touches('ammeter.2', `bar:${me.barNear(-60)}`)
      .turnsOneBar();
    expect(me.refusal).toBeNull();
    expect(me.sees.leads['ammeter.1'].touches).toBe(near(me));
    me.hangsUp('ammeter.1');
    expect(me.sees.hands[0].holds).toBe('ammeter.2');
  });

  it('hold a lamp lead each', () => {
    const me = new BenchDriver().takes('lamp.2').takes('lamp.1');
    expect(me.sees.hands.map((hand) => hand.holds)).toEqual(['lamp.2', 'lamp.1']);
  });

  it('take hold for a turn and let go after it', () => {
    const me = new BenchDriver().placesArmature().turns(33.3);
    expect(me.sees.hands.map((hand) => hand.holds)).toEqual(['nothing', 'nothing']);
    expect(me.sees.rotationDeg).toBe(33.3);
    me.layHandOnArmature().turns(-40);
    expect(me.sees.hands[0].holds).toBe('armature');
    expect(me.sees.rotationDeg).toBe(353.3);
  });

  it('part two tips that lay together as soon as one moves', () => {
    const me = new BenchDriver()
      .placesArmature()
      .takes('lamp.1')
      .takes('lamp.2')
      .touches('lamp.1', 'tip:lamp.2');
    expect(me.sees.leads['lamp.2'].touches).toBe('tip:lamp.1');
    me.touches('lamp.2', 'shaft');
    expect(me.sees.leads['lamp.1'].touches).toBeNull();
  });

  it('lose every contact when the armature is lifted out, the stand staying where it is', () => {
    const me = new BenchDriver().placesArmature().setsProbesAt(-90, -60).liftsArmature().placesArmature();
    expect(me.sees.leads['ammeter.1']).toEqual({
      at: 'stand',
      grip: null,
      touches: null,
      stationDeg: null,
      leaning: false,
    });
  });
});

describe('reach', () => {
  it('covers the near side and a little past top and bottom, whatever the rotation', () => {
    const me = new BenchDriver().placesArmature();
    for (let step = 0; step < 23; step += 1) {
      const reached = Array.from({ length: 23 }, (_, bar) => bar).filter((bar) => me.reaches(bar));
      expect(reached.length).toBeGreaterThanOrEqual(14);
      expect(reached.length).toBeLessThanOrEqual(15);
      me.turns(360 / 23 / 2);
    }
  });

  it('ends 115 degrees from the point nearest the person', () => {
    expect(canReach(-205)).toBe(true);
    expect(canReach(154)).toBe(false);
    expect(canReach(25)).toBe(true);
    expect(canReach(26)).toBe(false);
    expect(barAngleDeg({ bars: 4, barZeroDeg: -90 }, 1, 0)).toBe(0);
  });

  it('does not matter to a lens over an armature on the mat', () => {
    const me = new BenchDriver();
    for (let bar = 0; bar < 23; bar += 1) expect(me.looksAt(`bar:${bar}`).refusal).toBeNull();
    expect(me.looksAt('bar:23').refusal).toMatch(/no such bar/);
  });
});
