import { describe, expect, it } from 'vitest';
import type { BenchEvent } from '../../src/bench/happening.ts';
import type { InterlockCode } from '../../src/bench/interlocks.ts';
import { ARMATURE_KIT, type Kit } from '../../src/bench/kit.ts';
import { acrossPart, type BenchState } from '../../src/bench/state.ts';
import { SELECTOR, type Step, statesOf, walk } from './walk.ts';

const KIT: Kit = {
  ...ARMATURE_KIT,
  mat: ['fieldFrame', 'brushPlate'],
  tester: true,
  drop: true,
  lampFirst: [],
};
const on = (state: BenchState) => state.supply === 'on';
const place: BenchEvent = { type: 'armature.place' };

/** Acts that lay hands on the parts of the mat, and on the bench itself. */
const HANDS: readonly BenchEvent[] = [
  { type: 'part.takeUp', part: 'fieldFrame' },
  { type: 'part.putBack', part: 'fieldFrame' },
  { type: 'brushes.part' },
  { type: 'brushes.join' },
];
const LAMP_ON_FRAME: readonly BenchEvent[] = [
  { type: 'lead.take', lead: 'lamp.1', grip: 'handle' },
  { type: 'lead.touch', lead: 'lamp.1', place: 'field:case' },
  { type: 'lead.lift', lead: 'lamp.1' },
  { type: 'lead.holster', lead: 'lamp.1' },
];
const WORK: readonly BenchEvent[] = [
  { type: 'part.takeUp', part: 'brushPlate' },
  { type: 'remedy.do', remedy: 'skimAndPolish' },
  { type: 'remedy.do', remedy: 'cleanPlateInsulation' },
  { type: 'bench.setRight', what: 'lamp' },
  { type: 'bench.setRight', what: 'ammeterLeads' },
];
const clip = (lead: 'tester.1' | 'tester.2', at: 'field:case' | 'field:brush1'): readonly BenchEvent[] => [
  { type: 'lead.take', lead, grip: 'handle' },
  { type: 'lead.touch', lead, place: at },
  { type: 'lead.clamp', lead },
  { type: 'lead.holster', lead },
];
const TESTER: readonly BenchEvent[] = [
  { type: 'part.takeUp', part: 'fieldFrame' },
  ...clip('tester.1', 'field:case'),
  ...clip('tester.2', 'field:brush1'),
  { type: 'tester.press', on: true },
  { type: 'tester.press', on: false },
  { type: 'tester.discharge' },
  { type: 'brushes.part' },
];

/** What must not be done in a state: the act, and the rule that stands before it. */
interface Wrong {
  readonly name: string;
  readonly alphabet: readonly BenchEvent[];
  readonly rule: InterlockCode;
  bad(step: Step): boolean;
}

const touchesFrame = (event: BenchEvent) =>
  event.type === 'brushes.part' || event.type === 'brushes.join' || event.type === 'part.putBack';
const WRONGS: readonly Wrong[] = [
  {
    name: 'hands on the field frame under a live lamp probe',
    alphabet: [...SELECTOR, place, ...HANDS, ...LAMP_ON_FRAME],
    rule: 'liveMetal',
    bad: ({ from, event }) =>
      on(from) &&
      from.selector === 'low' &&
      from.leads['lamp.1'].touches === 'field:case' &&
      touchesFrame(event),
  },
  {
    name: 'a remedy on a live bench',
    alphabet: [...SELECTOR, place, { type: 'armature.lift' }, ...WORK],
    rule: 'remedyLive',
    bad: ({ from, event }) => on(from) && event.type === 'remedy.do',
  },
  {
    name: 'the bench itself worked on live',
    alphabet: [...SELECTOR, place, ...WORK],
    rule: 'setRightLive',
    bad: ({ from, event }) => on(from) && event.type === 'bench.setRight',
  },
  {
    name: 'the tester pressed on a live bench',
    alphabet: [...SELECTOR, place, ...TESTER],
    rule: 'testerLive',
    bad: ({ to }) => on(to) && to.tester.pressed,
  },
  {
    name: 'a hand on a part that was not discharged',
    alphabet: TESTER,
    rule: 'notDischarged',
    bad: ({ from, event }) =>
      from.memory.charged === 'fieldFrame' && !from.tester.pressed && touchesFrame(event),
  },
];

const goesThrough = ({ outcome }: Step) => outcome.kind === 'done';
const works = ({ from }: Step) => from.stage === 'working';

describe.each(WRONGS)('$name', ({ alphabet, rule, bad }) => {
  it('is reached by no path of guided work', () => {
    const steps = walk({ mode: 'guided', alphabet, kit: KIT });
    expect(statesOf(steps).length).toBeGreaterThan(10);
    expect(steps.filter((step) => works(step) && goesThrough(step) && bad(step))).toEqual([]);
    expect(steps.some(({ outcome }) => outcome.breaches.some(({ interlock }) => interlock === rule))).toBe(
      true,
    );
  });

  it.each(['practice', 'assessed'] as const)('holds a breach on every path of %s work', (mode) => {
    const steps = walk({ mode, alphabet, kit: KIT }).filter((step) => works(step) && goesThrough(step));
    expect(steps.some(bad)).toBe(true);
    const clean = walk({ mode, alphabet, kit: KIT, without: 'any breach' });
    expect(clean.filter((step) => works(step) && goesThrough(step) && bad(step))).toEqual([]);
  });
});

describe.each(['practice', 'assessed'] as const)('%s work on parts and bench', (mode) => {
  const alphabet = [...SELECTOR, place, ...HANDS, ...LAMP_ON_FRAME, ...WORK];

  it('is stopped by a critical breach and by nothing else, and stays so', () => {
    const steps = walk({ mode, alphabet, kit: KIT });
    for (const step of steps) {
      const critical = goesThrough(step) && step.outcome.breaches.some((breach) => breach.critical);
      if (works(step)) expect(step.to.stage === 'stopped').toBe(critical);
      else expect(step.to).toEqual(step.from);
    }
  });
});

describe('parts and clips, in every state there is', () => {
  const states = statesOf(
    walk({ mode: 'practice', alphabet: [...TESTER, { type: 'part.putBack', part: 'fieldFrame' }], kit: KIT }),
  );

  it('never lets a clip lie on a part that stands at the back', () => {
    expect(states.some((state) => acrossPart(state.leads, 'tester') === 'fieldFrame')).toBe(true);
    for (const { mat, leads } of states) {
      const onFrame = Object.values(leads).some(({ touches }) => touches?.startsWith('field:'));
      if (onFrame) expect(mat.fieldFrame).toBe('forward');
    }
  });

  it('remembers a charge only where the button has been down, until it is discharged or touched', () => {
    expect(states.some(({ memory }) => memory.charged === 'fieldFrame')).toBe(true);
    for (const { memory, tester, leads } of states) {
      if (tester.pressed && acrossPart(leads, 'tester') !== null) expect(memory.charged).toBe('fieldFrame');
    }
  });
});
