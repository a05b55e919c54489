import { describe, expect, it } from 'vitest';
import type { BenchEvent } from '../../src/bench/happening.ts';
import type { InterlockCode } from '../../src/bench/interlocks.ts';
import { ALL_LEADS, leadSet } from '../../src/bench/places.ts';
import { type BenchState, handWithLead, onPart, touching } from '../../src/bench/state.ts';
import {
  CRADLE,
  CUT_OUT,
  leadWork,
  PROOF,
  SELECTOR,
  STRIP,
  type Step,
  statesOf,
  TURNING,
  walk,
} from './walk.ts';

const lampLive = (s: BenchState) => s.supply === 'on' && s.selector === 'low';
const lampOnPart = (s: BenchState) => touching(s.leads, 'lamp', onPart).length > 0;
const place: BenchEvent = { type: 'armature.place' };

/** A state nobody should be in, what can be done meanwhile, and the rules that stand before it. */
interface Danger {
  readonly name: string;
  readonly alphabet: readonly BenchEvent[];
  readonly rules: readonly InterlockCode[];
  bad(state: BenchState): boolean;
}

const DANGERS: readonly Danger[] = [
  {
    name: 'the bench on with an empty cradle',
    alphabet: [...SELECTOR, ...CRADLE, ...TURNING, ...CUT_OUT],
    rules: ['emptyCradle'],
    bad: (s) => s.supply === 'on' && s.cradle === 'empty',
  },
  {
    name: 'a live lamp lead held by its tip',
    alphabet: [...SELECTOR, place, ...CUT_OUT, ...leadWork('lamp.1', ['core'], ['handle', 'tip'])],
    rules: ['liveTip'],
    bad: (s) => lampLive(s) && s.leads['lamp.1'].grip === 'tip',
  },
  {
    name: 'a hand on the part under a live lamp probe',
    alphabet: [...SELECTOR, ...CRADLE, ...TURNING, ...leadWork('lamp.1', ['bar:0', 'core'])],
    rules: ['liveMetal'],
    bad: (s) => lampLive(s) && lampOnPart(s) && s.hands.includes('armature'),
  },
  {
    name: 'fingers on an ammeter tip on the part under a live lamp probe',
    alphabet: [
      ...SELECTOR,
      place,
      ...leadWork('lamp.1', ['core']),
      ...leadWork('ammeter.1', ['bar:0'], ['handle', 'tip']),
    ],
    rules: ['liveMetal'],
    bad: (s) =>
      lampLive(s) &&
      lampOnPart(s) &&
      s.leads['ammeter.1'].grip === 'tip' &&
      onPart(s.leads['ammeter.1'].touches),
  },
  {
    name: 'the strip over the core on LOW',
    alphabet: [...SELECTOR, ...CRADLE, ...STRIP, ...CUT_OUT],
    rules: ['stripOnLow'],
    bad: (s) => lampLive(s) && s.strip.at === 'core',
  },
  {
    name: 'ammeter tips on the part on LOW',
    alphabet: [
      ...SELECTOR,
      place,
      ...leadWork('ammeter.1', ['bar:0', 'core']),
      ...leadWork('ammeter.2', ['bar:0']),
    ],
    rules: ['leadsMixed'],
    bad: (s) => lampLive(s) && touching(s.leads, 'ammeter', onPart).length > 0,
  },
  {
    name: 'lamp tips on the part on HIGH',
    alphabet: [...SELECTOR, place, ...leadWork('lamp.1', ['bar:0', 'core']), ...leadWork('lamp.2', ['core'])],
    rules: ['leadsMixed'],
    bad: (s) => s.supply === 'on' && s.selector === 'high' && lampOnPart(s),
  },
];

describe('guided work', () => {
  for (const { name, alphabet, bad } of DANGERS) {
    it(`lets no path reach ${name}`, () => {
      const states = statesOf(walk({ mode: 'guided', alphabet }));
      expect(states.length).toBeGreaterThan(10);
      expect(states.filter(bad)).toEqual([]);
    });
  }

  it('lets no lamp test begin on a lamp that has not been proved', () => {
    const steps = walk({ mode: 'guided', alphabet: LAMP_WORK });
    expect(steps.some(({ to }) => to.lamp === 'used')).toBe(true);
    expect(steps.filter(({ from, to }) => from.lamp === 'unproved' && to.lamp === 'used')).toEqual([]);
  });

  it('is never stopped, since it refuses every critical act', () => {
    const alphabet = [
      ...SELECTOR,
      ...CRADLE,
      ...TURNING,
      ...CUT_OUT,
      ...leadWork('lamp.1', ['core'], ['handle', 'tip']),
    ];
    const states = statesOf(walk({ mode: 'guided', alphabet, when: tripsOnlyWhenOn }));
    expect(states.length).toBeGreaterThan(20);
    expect(states.filter((state) => state.stage === 'stopped')).toEqual([]);
  });

  it('changes nothing when it refuses', () => {
    const steps = walk({ mode: 'guided', alphabet: LAMP_WORK });
    const refused = steps.filter(({ outcome }) => outcome.kind === 'refused');
    expect(refused.length).toBeGreaterThan(50);
    expect(refused.filter(({ from, to }) => key(from) !== key(to))).toEqual([]);
  });

  it('never refuses to be switched off while a hand is free', () => {
    const steps = walk({ mode: 'guided', alphabet: LAMP_WORK });
    const off = steps.filter(
      ({ from, event }) => event.type === 'selector.turn' && event.to === 'off' && from.selector !== 'off',
    );
    const stuck = off.filter(({ from, to }) => from.hands.includes('nothing') && to.selector !== 'off');
    expect(off.length).toBeGreaterThan(10);
    expect(stuck.filter(({ from }) => from.stage === 'working')).toEqual([]);
  });
});

/** A cut-out opens only while current flows. */
const tripsOnlyWhenOn = (state: BenchState, event: BenchEvent) =>
  event.type !== 'bench.tripped' || state.supply === 'on';

const key = (state: BenchState) => JSON.stringify(state);

const LAMP_WORK: readonly BenchEvent[] = [
  ...SELECTOR,
  place,
  PROOF,
  ...leadWork('lamp.1', ['core', 'tip:lamp.2']),
  ...leadWork('lamp.2', ['bar:0']),
  { type: 'job.handIn' },
];

describe.each(['practice', 'assessed'] as const)('%s work', (mode) => {
  for (const { name, alphabet, rules, bad } of DANGERS) {
    it(`lets ${name} happen, and every path there holds a breach`, () => {
      const free = statesOf(walk({ mode, alphabet }));
      const critical = rules.includes('liveTip') || rules.includes('liveMetal');
      // A critical act isolates the bench at once, so the danger shows as the stop it led to.
      const there = (state: BenchState) => bad(state) || (critical && state.stage === 'stopped');
      expect(free.some(there)).toBe(true);
      const clean = statesOf(walk({ mode, alphabet, without: 'any breach' }));
      expect(clean.filter(there)).toEqual([]);
    });
  }

  it('records an unproved lamp on every path that uses one', () => {
    const steps = walk({ mode, alphabet: LAMP_WORK });
    const unproved = steps.filter(({ from, to }) => from.lamp === 'unproved' && to.lamp === 'used');
    expect(unproved.length).toBeGreaterThan(0);
    expect(unproved.filter((step) => !breaks(step, 'lampNotProvedBefore'))).toEqual([]);
  });

  it('records a lamp not proved again on every path that leaves LOW or hands in with a used lamp', () => {
    const steps = walk({ mode, alphabet: LAMP_WORK }).filter(({ outcome }) => outcome.kind === 'done');
    const ends = steps.filter(
      ({ from, to }) =>
        from.stage === 'working' &&
        from.lamp === 'used' &&
        (to.selector !== 'low' || to.stage === 'handedIn'),
    );
    expect(ends.length).toBeGreaterThan(0);
    expect(ends.filter((step) => !breaks(step, 'lampNotProvedAfter'))).toEqual([]);
  });

  it('is stopped by a critical breach and by nothing else', () => {
    const alphabet = [
      ...SELECTOR,
      ...CRADLE,
      ...TURNING,
      ...CUT_OUT,
      ...leadWork('lamp.1', ['core'], ['handle', 'tip']),
    ];
    const working = walk({ mode, alphabet }).filter(({ from }) => from.stage === 'working');
    const critical = ({ outcome }: Step) =>
      outcome.kind === 'done' && outcome.breaches.some((breach) => breach.critical);
    expect(working.some(critical)).toBe(true);
    for (const step of working) expect(step.to.stage === 'stopped').toBe(critical(step));
  });

  it('stays stopped, isolated and unchanged whatever is tried afterwards', () => {
    const alphabet = [...SELECTOR, ...CRADLE, ...TURNING, ...leadWork('lamp.1', ['core'], ['handle', 'tip'])];
    const after = walk({ mode, alphabet }).filter(({ from }) => from.stage === 'stopped');
    expect(after.length).toBeGreaterThan(0);
    for (const { from, to } of after) {
      expect(to).toEqual(from);
      expect(to.supply).toBe('isolated');
    }
  });
});

function breaks({ outcome }: Step, code: InterlockCode): boolean {
  return outcome.breaches.some((breach) => breach.interlock === code);
}

describe('hands and leads, in every state there is', () => {
  const alphabet: readonly BenchEvent[] = [
    { type: 'selector.turn', to: 'high' },
    place,
    ...TURNING,
    ...leadWork('ammeter.1', ['bar:0']),
    ...leadWork('ammeter.2', ['bar:0']),
    { type: 'lead.clamp', lead: 'ammeter.1' },
    { type: 'lead.clamp', lead: 'ammeter.2' },
    { type: 'strip.take' },
    { type: 'strip.hang' },
  ];
  const states = statesOf(walk({ mode: 'practice', alphabet }));

  it('finds a lead in a hand exactly when a hand has it', () => {
    for (const state of states) {
      for (const lead of ALL_LEADS) {
        expect(state.leads[lead].at === 'hand').toBe(handWithLead(state, lead) !== null);
      }
    }
  });

  it('finds the strip in a hand exactly when a hand has it, and never in both', () => {
    for (const { strip, hands } of states) {
      expect(hands.filter((held) => held === 'strip').length).toBe(strip.at === 'rail' ? 0 : 1);
    }
  });

  it('lets a lead touch metal only from a hand or the stand, and the stand hold ammeter leads only', () => {
    for (const { leads } of states) {
      for (const lead of ALL_LEADS) {
        if (leads[lead].touches !== null) expect(leads[lead].at).not.toBe('holster');
        if (leads[lead].at === 'stand') expect(leadSet(lead)).toBe('ammeter');
        expect(leads[lead].grip === null).toBe(leads[lead].at !== 'hand');
      }
    }
  });

  it('lets a hand lie on an armature only where there is one', () => {
    for (const { hands, cradle } of states) if (hands.includes('armature')) expect(cradle).toBe('armature');
  });

  it('keeps ammeter tips at their stations while the bars pass under them', () => {
    const turned = walk({ mode: 'practice', alphabet }).filter(
      ({ event, outcome }) => event.type === 'armature.turn' && outcome.kind === 'done',
    );
    expect(turned.some(({ from }) => from.leads['ammeter.1'].at === 'stand')).toBe(true);
    for (const { from, to } of turned) {
      for (const lead of ALL_LEADS) expect(to.leads[lead].stationDeg).toBe(from.leads[lead].stationDeg);
      const under = from.leads['ammeter.1'].touches;
      if (under !== null) expect(to.leads['ammeter.1'].touches).not.toBe(under);
    }
  });
});

it('practice and assessed work go through the same states', () => {
  const seen = (mode: 'practice' | 'assessed') =>
    walk({ mode, alphabet: LAMP_WORK }).map(({ to }) => key(to));
  expect(seen('practice')).toEqual(seen('assessed'));
});
