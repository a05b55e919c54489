import { describe, expect, it } from 'vitest';
import { PREPARATIONS } from '../../src/bench/action.ts';
import {
  deadMeterWork,
  type GuideStep,
  isGuidedTest,
  linesThatCount,
  NOTHING_WATCHED,
  nextStep,
  prepareStep,
  type RemedyDone,
  testStep,
  unmovedWork,
  watch,
  zeroWork,
} from '../../src/bench/guide/guide.ts';
import type { Observation } from '../../src/bench/observation.ts';
import type { SheetLine, TestKind } from '../../src/bench/paper.ts';
import { type FieldPlace, type PlatePlace, partOf } from '../../src/bench/places.ts';
import { BenchDriver, type JobOptions } from '../support/benchDriver.ts';

/** What a beginner writes who knows only what lies in front of them. */
function lineFor(test: TestKind, seen: Observation): SheetLine {
  const at = seen.leads['lamp.2'].touches ?? seen.leads['tester.2'].touches ?? seen.leads['drop.2'].touches;
  const part = at === null ? seen.look && partOf(seen.look.place) : partOf(at);
  const base = { test, count: null, ...(part === null ? {} : { part }) };
  const onMat = at !== null && (at.startsWith('field:') || at.startsWith('plate:'));
  const where = onMat ? { at: at as FieldPlace | PlatePlace } : {};
  if (test === 'gauges') {
    const { gauge, brush, mm } = seen.gauge!;
    return { test, count: null, gauge, millimetres: mm, ...(brush === null ? {} : { brush }) };
  }
  if (test === 'megohm') return { ...base, ...where, megohms: seen.tester.megohms! };
  if (test === 'millivolt') {
    const bar = seen.leads['drop.1'].touches!;
    const count = bar.startsWith('bar') ? Number(bar.slice(4)) - (seen.chalkedBar ?? 0) : null;
    return { ...base, ...where, count, millivolts: seen.drop.millivolts! };
  }
  if (test === 'look') return { ...base, remark: seen.look?.sees.join(', ') || 'nothing to see' };
  return { ...base, ...where, lamp: seen.lamp.glow > 4 ? 'lit' : 'dark' };
}

interface Followed {
  readonly me: BenchDriver;
  readonly steps: readonly GuideStep[];
  readonly lines: readonly SheetLine[];
  readonly remedies: readonly RemedyDone[];
}

/** Someone who does what the guide says and nothing else, in guided work. */
function follow(options: JobOptions): Followed {
  const me = new BenchDriver({ mode: 'guided', ...options });
  const { parts = ['armature'], tests = [] } = options;
  const job = { parts, tests, armature: me.geometry, limits: LIMITS };
  const lines: SheetLine[] = [];
  const remedies: RemedyDone[] = [];
  const steps: GuideStep[] = [];
  let watched = NOTHING_WATCHED;
  for (let left = 2000; left > 0; left -= 1) {
    watched = watch(watched, me.sees);
    const step = nextStep(
      { seen: me.sees, lines: linesThatCount(lines, remedies), remedies, watched },
      job,
      1,
    );
    if (step === null) return { me, steps, lines, remedies };
    steps.push(step);
    if (step.act?.type === 'remedy.do') {
      remedies.push({ remedy: step.act.remedy, bar: step.act.bar ?? null, linesBefore: lines.length });
    }
    if (step.act !== null) me.does(step.act);
    else if (step.write === undefined) me.waits(600);
    else {
      const line = lineFor(step.write, me.waits(6000).sees);
      lines.push(line);
      me.does({ type: 'sheet.write', line });
    }
    expect(me.refusal, `${step.do}`).toBeNull();
  }
  throw new Error('The guide never comes to an end.');
}

const LIMITS = { commutatorDiameterMm: 31, runOutMm: 0.05, undercutMm: 0.2, insulationMohm: 1 };

const MAT: JobOptions = {
  parts: ['fieldFrame', 'brushPlate'],
  tests: ['look', 'fieldContinuity', 'fieldInsulation', 'plateInsulation', 'plateEarthed'],
};

describe('someone who does what the guide says', () => {
  it('looks over, prepares and tests field frame and brush plate without a breach', () => {
    const { me, lines } = follow(MAT);
    expect(me.everythingBroken).toEqual([]);
    expect(me.sees.prepared).toEqual([...PREPARATIONS]);
    const lamp = lines.map(({ test, at, lamp: shown }) => `${test} ${at} ${shown}`);
    expect(lamp.filter((line) => !line.startsWith('look'))).toEqual([
      'fieldContinuity field:brush1 lit',
      'fieldContinuity field:brush2 lit',
      'fieldInsulation field:brush1 dark',
      'fieldInsulation field:brush2 dark',
      'plateInsulation plate:insulated1 dark',
      'plateInsulation plate:insulated2 dark',
      'plateEarthed plate:earthed1 lit',
      'plateEarthed plate:earthed2 lit',
    ]);
  });

  it('proves the lamp before and after, keeps the brushes apart and leans on the holders', () => {
    const { me } = follow(MAT);
    const acts = me.session.log.map(({ action }) => action);
    const first = (type: string) => acts.findIndex((action) => action.type === type);
    expect(first('brushes.part')).toBeLessThan(first('lead.touch'));
    expect(acts.filter(({ type }) => type === 'lead.lean').length).toBe(4);
    expect(me.session.stateAt(me.atMs + 100).lamp).toBe('proved');
  });

  it('finds what is the matter: an open branch, a rivet that makes when pressed', () => {
    const { lines } = follow({
      ...MAT,
      fieldFaults: [{ kind: 'openCoil', coil: 2 }],
      plateFaults: [{ kind: 'looseRivet', holder: 'plate:insulated2', makes: 'pressed', ohm: 0.3 }],
    });
    const lit = (test: TestKind, at: string) =>
      lines.find((line) => line.test === test && line.at === at)?.lamp === 'lit';
    expect(lit('fieldContinuity', 'field:brush1')).toBe(true);
    expect(lit('fieldContinuity', 'field:brush2')).toBe(false);
    expect(lit('plateInsulation', 'plate:insulated2')).toBe(true);
  });

  it('uses the insulation tester on every part, discharges it and puts it away', () => {
    const { me, lines } = follow({
      parts: ['armature', 'fieldFrame', 'brushPlate'],
      tests: ['megohm'],
      fieldFaults: [{ kind: 'weakInsulation', coil: 0, ohm: 4e5, breakdownV: null }],
    });
    expect(me.everythingBroken).toEqual([]);
    expect(lines.map(({ part }) => part)).toEqual(['armature', 'fieldFrame', 'brushPlate', 'brushPlate']);
    expect(lines[1]!.megohms).toBeCloseTo(0.4, 1);
    expect(me.sees.tester.discharged).toBe(true);
    expect(me.sees.leads['tester.1'].at).toBe('holster');
  });

  it('feeds and reads both branches, then every pair of bars from the chalk', () => {
    const { me, lines } = follow({ parts: ['armature', 'fieldFrame'], part: 'lap-28', tests: ['millivolt'] });
    expect(me.everythingBroken).toEqual([]);
    expect(lines.filter(({ part }) => part === 'fieldFrame').map(({ at }) => at)).toEqual([
      'field:brush1',
      'field:brush2',
    ]);
    const counts = lines.flatMap(({ part, count }) => (part === 'armature' ? [count] : []));
    expect(counts).toEqual(Array.from({ length: 28 }, (_, n) => n));
    expect(me.sees.drop.feed).toBeNull();
  });

  it('puts every gauge to the parts', () => {
    const { me, lines } = follow({ parts: ['armature', 'fieldFrame', 'brushPlate'], tests: ['gauges'] });
    expect(me.everythingBroken).toEqual([]);
    expect(lines.map(({ gauge, brush = '' }) => `${gauge}${brush}`)).toEqual([
      'diameter',
      'runOut',
      'undercut',
      'brushLength0',
      'brushLength1',
      'brushLength2',
      'brushLength3',
    ]);
  });
});

describe('after a finding', () => {
  const PLATE: JobOptions = { parts: ['brushPlate'], tests: ['look', 'plateInsulation', 'plateEarthed'] };
  const shown = (lines: readonly SheetLine[], test: TestKind, at: string) =>
    lines.filter((line) => line.test === test && line.at === at).map(({ lamp }) => lamp);

  it('tightens a loose rivet and finds the holder good on the retest', () => {
    const { me, lines, remedies } = follow({
      ...PLATE,
      plateFaults: [{ kind: 'looseRivet', holder: 'plate:insulated2', makes: 'pressed', ohm: 0.3 }],
    });
    expect(me.everythingBroken).toEqual([]);
    expect(remedies.map(({ remedy }) => remedy)).toContain('tightenRivets');
    const lamp = shown(lines, 'plateInsulation', 'plate:insulated2');
    expect([lamp[0], lamp.at(-1)]).toEqual(['lit', 'dark']);
    expect(me.sees.minutesSpent).toBeGreaterThan(0);
  });

  it('cleans packed dirt off, and does not touch the rivets when that has cured it', () => {
    const { lines, remedies } = follow({
      ...PLATE,
      plateFaults: [{ kind: 'dirt', holder: 'plate:insulated1', ohm: 20 }],
    });
    const lamp = shown(lines, 'plateInsulation', 'plate:insulated1');
    expect(lamp.at(-1)).toBe('dark');
    expect(remedies.map(({ remedy }) => remedy).at(-1)).toBe('cleanPlateInsulation');
  });

  it('tries each remedy once on an insulator that has broken down, and stops there', () => {
    const { lines, remedies } = follow({
      ...PLATE,
      plateFaults: [{ kind: 'insulatorDown', holder: 'plate:insulated1', ohm: 5, breakdownV: null }],
    });
    expect(remedies.map(({ remedy }) => remedy).sort()).toEqual(['cleanPlateInsulation', 'tightenRivets']);
    expect(shown(lines, 'plateInsulation', 'plate:insulated1').at(-1)).toBe('lit');
  });

  it('does nothing to a sound plate, nor to a field frame that is past helping here', () => {
    expect(follow(PLATE).remedies).toEqual([]);
    const frame = follow({
      parts: ['fieldFrame'],
      tests: ['fieldContinuity', 'fieldInsulation'],
      fieldFaults: [{ kind: 'openCoil', coil: 0 }],
    });
    expect(frame.remedies).toEqual([]);
  });

  it('cuts mica that lies too high, and measures it again', () => {
    const { lines, remedies } = follow({ tests: ['gauges'], wear: { undercutMm: 0.1 } });
    expect(remedies.map(({ remedy }) => remedy)).toEqual(['undercut']);
    const depths = lines.filter(({ gauge }) => gauge === 'undercut').map(({ millimetres }) => millimetres);
    expect(depths[0]).toBeLessThan(0.2);
    expect(depths.at(-1)).toBeGreaterThan(0.5);
  });

  it('turns a commutator true only while the card’s diameter allows it', () => {
    const worn = { tests: ['gauges'], wear: { runOutMm: 0.2 } } as const;
    expect(follow(worn).remedies.map(({ remedy }) => remedy)).toEqual(['skimAndPolish']);
    const thin = follow({ tests: ['gauges'], wear: { runOutMm: 0.2, commutatorDiameterMm: 31.1 } });
    expect(thin.remedies).toEqual([]);
  });
});

describe('a lamp that cannot be trusted', () => {
  const LAMP: JobOptions = { parts: ['fieldFrame'], tests: ['fieldContinuity'] };
  it.each<[string, JobOptions['benchFaults'], string]>([
    ['a blown bulb', [{ kind: 'blownLamp' }], 'lamp'],
    ['a broken lead', [{ kind: 'brokenLead', lead: 'lamp.2' }], 'lampLeads'],
  ])('%s is found and put right, and the test done after a proof', (_what, benchFaults = [], care) => {
    const { me, lines } = follow({ ...LAMP, benchFaults });
    expect(me.everythingBroken).toEqual([]);
    const repairs = me.session.log.flatMap(({ action }) =>
      action.type === 'bench.setRight' ? [action.what] : [],
    );
    expect(repairs).toContain(care);
    expect(lines.map(({ lamp }) => lamp)).toEqual(['lit', 'lit']);
  });

  it('is not taken in the hand at all while a handle is cracked', () => {
    const { me, lines } = follow({ ...LAMP, benchFaults: [{ kind: 'crackedHandle', lead: 'lamp.2' }] });
    expect(me.everythingBroken).toEqual([]);
    const acts = me.session.log.map(({ action }) => action);
    const at = (type: string) => acts.findIndex((action) => action.type === type);
    expect(at('bench.setRight')).toBeGreaterThan(-1);
    expect(at('bench.setRight')).toBeLessThan(at('lead.take'));
    expect(lines.map(({ lamp }) => lamp)).toEqual(['lit', 'lit']);
  });
});

describe('an ammeter that cannot be trusted', () => {
  /** Everything somebody saw of the bench while they worked at it. */
  const watched = (me: BenchDriver, seen = NOTHING_WATCHED) => watch(seen, me.sees);
  const across = (benchFaults: JobOptions['benchFaults'] = []) =>
    new BenchDriver({ benchFaults }).placesArmature().switches('high').setsProbesAt(-90, -75);

  it('off zero with nothing connected is set, off first, and is left alone with a current through it', () => {
    const off: JobOptions = { benchFaults: [{ kind: 'ammeterZero', offset: 0.05 }] };
    expect(zeroWork({ seen: new BenchDriver().sees })).toBeNull();
    expect(zeroWork({ seen: new BenchDriver(off).sees })?.act).toEqual({
      type: 'bench.setRight',
      what: 'ammeterZero',
    });
    const on = new BenchDriver(off).placesArmature().switches('high').waits(4000);
    expect(zeroWork({ seen: on.sees })?.act).toEqual({ type: 'selector.turn', to: 'off' });
    expect(zeroWork({ seen: across().waits(4000).sees })).toBeNull();
  });

  it('gets new leads after three pairs at which nothing moved, not after two, and somebody is told when that was not it', () => {
    const dead = { ...NOTHING_WATCHED.meter, nothingAt: ['1,2', '2,3'] };
    const { sees: seen } = new BenchDriver();
    const work = (meter: typeof dead) => deadMeterWork({ seen, watched: { ...NOTHING_WATCHED, meter } });
    expect(work(dead)).toBeNull();
    const third = { ...dead, nothingAt: [...dead.nothingAt, '3,4'] };
    expect(work(third)?.act).toEqual({ type: 'bench.setRight', what: 'ammeterLeads' });
    expect(work({ ...third, repairs: 1 })).toMatchObject({
      act: null,
      do: 'Tell whoever looks after the bench.',
    });
  });

  it('that has moved once is believed when it stays down', () => {
    const me = across().waits(4000);
    expect(watched(me).meter).toMatchObject({ moved: true, nothingAt: [] });
    const broken = across([{ kind: 'brokenLead', lead: 'ammeter.1' }]).waits(4000);
    const seen = watched(broken);
    expect(seen.meter.moved).toBe(false);
    expect(unmovedWork({ seen: broken.sees, watched: seen })?.act?.type).toBe('range.turn');
  });
});

describe('what the guide says', () => {
  const { steps } = follow(MAT);

  it('is a sentence with a reason, and shows where', () => {
    for (const step of steps) {
      expect(step.do).toMatch(/^[A-Z].*\.$/);
      expect(step.because).toMatch(/^[A-Z“].*\.$/);
      if (step.act !== null) expect(step.highlight).not.toBeNull();
    }
  });

  it('is only the name of the next test for someone who has done it before', () => {
    const seen = new BenchDriver(MAT).sees;
    const job = {
      parts: MAT.parts!,
      tests: MAT.tests!,
      armature: { bars: 23, barZeroDeg: 0 },
      limits: LIMITS,
    };
    const facts = { seen, lines: [], remedies: [], watched: NOTHING_WATCHED };
    expect(nextStep(facts, job, 2)).toEqual({
      do: 'Next: look the parts over.',
      because: 'Eyes first, power afterwards.',
      act: null,
      highlight: null,
    });
    const later = testStep('plateEarthed', facts, job, 2);
    expect(later?.do).toBe('Next: the grounded brushes to the plate.');
    expect(later?.act).toBeNull();
  });

  it('is nothing about preparation once the bench is on, and nothing about an armature on the growler', () => {
    const me = new BenchDriver().placesArmature().switches('high');
    expect(prepareStep({ seen: me.sees })).toBeNull();
    const job = {
      parts: ['armature'],
      tests: ['spaced', 'strip'],
      armature: me.geometry,
      limits: LIMITS,
    } as const;
    expect(nextStep({ seen: me.sees, lines: [], remedies: [], watched: NOTHING_WATCHED }, job, 1)).toBeNull();
    expect((['spaced', 'neighbour', 'ground', 'strip', 'look'] as const).some(isGuidedTest)).toBe(false);
  });
});
