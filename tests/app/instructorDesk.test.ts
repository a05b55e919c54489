import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import { boardJobs } from '../../src/app/instructor/board.ts';
import { classSet, neighboursBefore, seatFamilies } from '../../src/app/instructor/classSet.ts';
import { createInstructorDesk } from '../../src/app/instructor/desk.ts';
import { effectsOf } from '../../src/app/instructor/effects.ts';
import type { ArmatureFault } from '../../src/engine/parts/armatureFault.ts';
import { FAMILIES } from '../../src/scenario/generate.ts';
import type { Parsed, Scenario } from '../../src/scenario/scenario.ts';
import type { InstructorDesk, SetWish } from '../../src/screens/instructor/desk.ts';
import { newOtherFault, otherKindsAt, otherSpotOf, spotsOf } from '../../src/screens/instructor/matSpots.ts';
import {
  withBrush,
  withLimit,
  withOtherFaults,
  withPart,
  withWear,
} from '../../src/screens/instructor/partEdits.ts';
import { differs } from '../../src/screens/shared/toldWords.ts';
import { openBrowserStore } from '../../src/store/browserStore.ts';
import type { Store } from '../../src/store/store.ts';
import { job, PARTS } from '../support/jobs.ts';

let store: Store;
let desk: InstructorDesk;

beforeEach(async () => {
  globalThis.indexedDB = new IDBFactory();
  store = await openBrowserStore();
  desk = createInstructorDesk({ library: { parts: PARTS, scenarios: new Map(), problems: [] }, store });
});

async function got<T>(answer: Promise<Parsed<T>> | Parsed<T>): Promise<T> {
  const found = await answer;
  if (!found.ok) throw new Error(found.issues.map(({ path, sentence }) => `${path}: ${sentence}`).join('\n'));
  return found.value;
}

const withFaults = (scenario: Scenario, ...faults: ArmatureFault[]): Scenario => ({
  ...scenario,
  hidden: { ...scenario.hidden, armature: { faults } },
});

describe('a job on the instructor’s shelf', () => {
  it('is begun, changed, saved and stands on the apprentices’ board', async () => {
    const id = await got(desk.begin('wave-23'));
    const { scenario, revision } = await got(desk.job(id));
    const changed = withFaults(scenario, { kind: 'bridgedBars', bar: 4, ohm: 3e-4, by: 'copper' });
    await got(desk.save(changed, revision));
    expect(await boardJobs(store, PARTS)).toEqual([changed]);
    expect(await got(desk.jobs())).toMatchObject([{ id, faults: 1, mode: 'practice' }]);
  });

  it('is not saved over what another window wrote', async () => {
    const id = await got(desk.begin('wave-23'));
    const { scenario, revision } = await got(desk.job(id));
    await got(desk.save(scenario, revision));
    expect(await desk.save(scenario, revision)).toMatchObject({ ok: false });
  });

  it('is refused with path and sentence when the part cannot have the fault', async () => {
    const { scenario, revision } = await got(desk.job(await got(desk.begin('wave-23'))));
    const answer = await desk.save(withFaults(scenario, { kind: 'openCoil', coil: 23 }), revision);
    expect(answer).toMatchObject({
      ok: false,
      issues: [{ path: 'hidden.armature.faults[0].coil', sentence: expect.stringContaining('0 to 22') }],
    });
  });

  it('goes out as a file whose name tells nothing and comes back the same, under a new id beside the old', async () => {
    const { scenario } = await got(desk.job(await got(desk.begin('lap-28'))));
    const file = await got(desk.file(withFaults(scenario, { kind: 'reversedCoil', coil: 2 })));
    expect(file.name).toMatch(/^q-[0-9a-f]{6}\.json$/);
    const back = await got(desk.open(new File([file.text], file.name)));
    expect(back).not.toBe(scenario.public.id);
    expect((await got(desk.job(back))).scenario.hidden.armature.faults).toEqual([
      { kind: 'reversedCoil', coil: 2 },
    ]);
  });

  it('can be duplicated and removed', async () => {
    const id = await got(desk.begin('lap-24'));
    const copy = await got(desk.duplicate(id));
    await got(desk.remove(id));
    expect((await got(desk.jobs())).map((one) => one.id)).toEqual([copy]);
  });

  it('a torn file is refused and nothing is kept', async () => {
    expect(await desk.open(new File(['{"format":'], 'torn.json'))).toMatchObject({ ok: false });
    expect(await got(desk.jobs())).toEqual([]);
  });
});

describe('what the tests will show', () => {
  const shown = (fault?: ArmatureFault) => {
    const scenario = job({ part: 'wave-23', faults: fault ? [fault] : [] });
    return effectsOf(scenario, PARTS.get('wave-23')!);
  };
  const seenBy = (effects: ReturnType<typeof shown>) =>
    effects.tests.filter(({ test, seen }) => seen && test !== 'look').map(({ test }) => test);

  it('a sound part shows nothing', () => {
    expect(seenBy(shown())).toEqual([]);
    expect(shown().hardness).toBe('sound');
  });

  // Common practice, no source: the lamp lights for a ground at every bar, the strip pulls for a bridge.
  it('a hard ground lights the lamp at every bar', () => {
    const effects = shown({ kind: 'groundedBar', bar: 3, ohm: 1 });
    expect(seenBy(effects)).toEqual(['ground']);
    expect(effects.tests.find(({ test }) => test === 'ground')).toMatchObject({ places: 23, of: 23 });
    expect(effects.hardness).toBe('easy');
  });

  it('a hard bridge is found by ammeter and strip, a megohm of carbon by nothing', () => {
    const hard = shown({ kind: 'bridgedBars', bar: 3, ohm: 2e-4, by: 'copper' });
    expect(hard.foundBy[0]?.tests).toEqual(expect.arrayContaining(['neighbour', 'strip']));
    const soft = shown({ kind: 'bridgedBars', bar: 3, ohm: 9e3, by: 'carbon' });
    expect(soft.hardness).toBe('beyond');
    expect(soft.foundBy[0]?.tests).toEqual([]);
  });
});

describe('what the tests will show of frame, plate and bench', () => {
  const whole = async () => {
    const { scenario } = await got(desk.job(await got(desk.begin('wave-23'))));
    return ['fieldFrame' as const, 'brushPlate' as const].reduce(
      (job, part) => withPart(job, part, true, desk),
      scenario,
    );
  };
  const shown = (scenario: Scenario) => effectsOf(scenario, PARTS.get('wave-23')!);
  /** Tests and places at which something else is read than on sound parts. */
  const standing = (scenario: Scenario) =>
    shown(scenario)
      .lines.filter(({ sound, shows }) => differs(sound, shows))
      .map(({ about: { test, at } }) => `${test} ${at ?? ''}`.trim());

  it('a sound unit reads everywhere as it should, card or not', async () => {
    const scenario = await whole();
    expect(standing(scenario)).toEqual([]);
    const { lines, bench, hardness } = shown(scenario);
    expect(
      lines.filter(({ about }) => about.test === 'fieldContinuity').map(({ shows }) => shows.lamp),
    ).toEqual(['lit', 'lit']);
    expect(bench).toEqual([]);
    expect(hardness).toBe('sound');
  });

  // Common practice, no source: an open coil leaves its brush dark from the terminal, a ground lights from the case.
  it('an open coil leaves one brush dark, and only the tests of the frame find it', async () => {
    const scenario = withOtherFaults(await whole(), 'fieldFrame', [{ kind: 'openCoil', coil: 0 }]);
    expect(standing(scenario)).toEqual(expect.arrayContaining(['fieldContinuity field:brush1']));
    expect(standing(scenario)).not.toContain('fieldContinuity field:brush2');
    expect(shown(scenario).foundBy).toMatchObject([
      { part: 'fieldFrame', fault: { kind: 'openCoil' }, tests: expect.arrayContaining(['fieldContinuity']) },
    ]);
    expect(shown(scenario).hardness).toBe('easy');
  });

  it('shorted turns stay hidden from a card without the millivolt drop', async () => {
    const faults = [newOtherFault('shortedTurns', 'coil:1')];
    const scenario = withOtherFaults(await whole(), 'fieldFrame', faults);
    const cardOf = (tests: Scenario['public']['tests']) => ({
      ...scenario,
      public: { ...scenario.public, tests },
    });
    const { tests } = scenario.public;
    expect(shown(cardOf(tests)).hardness).toBe('beyond');
    expect(shown(cardOf([...tests, 'millivolt'])).foundBy[0]!.tests).toEqual(['millivolt']);
  });

  it('dirt on the brush plate lights the lamp at its holder alone', async () => {
    const faults = [newOtherFault('dirt', 'plate:insulated2')];
    const scenario = withOtherFaults(await whole(), 'brushPlate', faults);
    expect(standing(scenario)).toContain('plateInsulation plate:insulated2');
    expect(standing(scenario)).not.toContain('plateInsulation plate:insulated1');
  });

  it('a blown lamp stays dark tips together, a broken ammeter lead reads nothing, a crack is seen', async () => {
    const scenario = withOtherFaults(await whole(), 'bench', [
      { kind: 'blownLamp' },
      { kind: 'brokenLead', lead: 'ammeter.1' },
      { kind: 'crackedHandle', lead: 'lamp.2' },
      { kind: 'ammeterZero', offset: 0.1 },
    ]);
    const bench = Object.fromEntries(shown(scenario).bench.map(({ what, ...rest }) => [what, rest]));
    expect(bench['Lamp, tips together on LOW']).toEqual({ sound: 'lit', shows: 'dark' });
    expect(bench['Needle with no current']!.sound).toMatch(/^0 A/);
    expect(bench['Needle with no current']!.shows).not.toMatch(/^0 A/);
    expect(bench['Ammeter across two bars on HIGH']!.shows).toBe(bench['Needle with no current']!.shows);
    expect(bench['Ammeter across two bars on HIGH']!.sound).not.toMatch(/^0 A/);
    expect(bench['Handles under the lens']).toEqual({ sound: 'whole', shows: 'cracked: lamp probe 2' });
  });

  it('every fault of every place makes a job the reader of files accepts', async () => {
    const scenario = await whole();
    const frame = desk.frameTypes[0]!;
    for (const other of ['fieldFrame', 'brushPlate', 'bench'] as const)
      for (const spot of spotsOf(other, frame))
        for (const kind of otherKindsAt(spot)) {
          const fault = newOtherFault(kind, spot);
          expect(otherSpotOf(fault)).toBe(spot);
          expect(desk.check(withOtherFaults(scenario, other, [fault]))).toMatchObject({ ok: true });
        }
  });

  it('parts go in sound with their own tests, and out again without a trace', async () => {
    const { scenario } = await got(desk.job(await got(desk.begin('wave-23'))));
    const both = withPart(scenario, 'fieldFrame', true, desk);
    expect(both.public.tests).toEqual(expect.arrayContaining(['fieldContinuity', 'fieldInsulation']));
    expect(desk.check(both)).toMatchObject({ ok: true });
    expect(withPart(both, 'fieldFrame', false, desk)).toEqual(scenario);
    const frameOnly = withPart(withFaults(both, { kind: 'openCoil', coil: 2 }), 'armature', false, desk);
    expect(desk.check(frameOnly)).toMatchObject({ ok: true });
    expect(frameOnly.public.tests).toEqual(['look', 'fieldContinuity', 'fieldInsulation']);
    expect(shown(frameOnly).tests.map(({ test }) => test)).toEqual(['look']);
  });

  it('a limit of the card’s own decides what counts as worn', async () => {
    const sound = await whole();
    const strict = withLimit(sound, 'brushLengthMm', 15);
    expect(desk.check(strict)).toMatchObject({ ok: true });
    expect(shown(strict).foundBy.map(({ part }) => part)).toEqual(['fieldFrame', 'brushPlate']);
    expect(withLimit(strict, 'brushLengthMm', null)).toEqual(sound);
    expect(desk.check(withLimit(sound, 'runOutMm', -1))).toMatchObject({
      ok: false,
      issues: [{ path: 'public.limits.runOutMm' }],
    });
  });

  it('wear beyond the card’s limit is found by the gauges', async () => {
    const sound = await whole();
    const scenario = withBrush(withWear(sound, 'runOutMm', 0.3), 1, 5);
    expect(desk.check(scenario)).toMatchObject({ ok: true });
    expect(standing(scenario)).toEqual(['gauges', 'gauges']);
    expect(shown(scenario).foundBy.map(({ part, fault }) => `${part} ${fault.kind}`)).toEqual([
      'armature worn',
      'fieldFrame worn',
    ]);
    expect(withBrush(withWear(scenario, 'runOutMm', null), 1, null)).toEqual(sound);
  });
});

describe('a set for a class', () => {
  const wish: SetWish = {
    ...{ seed: 'autumn', seats: 24, perRow: 4, part: 'wave-23', difficulty: 'medium' },
    about: ['armature'],
    ...{ mains: '230V50Hz', mode: 'assessed' },
  };

  it.each([1, 2, 3, 4, 7])('gives neighbours different kinds of fault, rows of %i', (perRow) => {
    const families = seatFamilies({ ...wish, perRow }, FAMILIES);
    families.forEach((family, seat) => {
      for (const other of neighboursBefore(seat, perRow)) expect(families[other]).not.toBe(family);
    });
  });

  it.each(['monday', 'autumn', '17'])('no two neighbours share a kind of fault, seed %s', (seed) => {
    const set = classSet({ ...wish, seed }, PARTS);
    const kinds = set.map(({ hidden }) => hidden.armature.faults.map(({ kind }) => kind));
    set.forEach((_, seat) => {
      for (const other of neighboursBefore(seat, wish.perRow))
        for (const kind of kinds[seat]!) expect(kinds[other]).not.toContain(kind);
    });
  });

  it('of whole units gives neighbours different faults in every part, each job in order', async () => {
    const whole: SetWish = { ...wish, about: ['armature', 'fieldFrame', 'brushPlate'], seats: 12 };
    const set = await got(desk.makeSet(whole));
    for (const job of set) {
      expect(job.public.parts).toEqual(whole.about);
      expect(desk.check(job)).toMatchObject({ ok: true });
    }
    const kinds = (part: 'fieldFrame' | 'brushPlate') =>
      set.map(({ hidden }) => (hidden[part]?.faults ?? []).map((fault) => JSON.stringify(fault)));
    for (const part of ['fieldFrame', 'brushPlate'] as const)
      kinds(part).forEach((own, seat) => {
        for (const other of neighboursBefore(seat, whole.perRow))
          for (const kind of own) expect(kinds(part)[other]).not.toContain(kind);
      });
  });

  it('of field frames has the workshop’s own sound armature in the cradle', async () => {
    const set = await got(desk.makeSet({ ...wish, about: ['fieldFrame'], seats: 6 }));
    expect(set.every(({ hidden }) => hidden.armature.faults.length === 0)).toBe(true);
    expect(
      new Set(set.flatMap(({ hidden }) => hidden.fieldFrame!.faults.map(({ kind }) => kind))).size,
    ).toBeGreaterThan(2);
    expect(desk.makeSet({ ...wish, about: ['fieldFrame'], part: 'lap-24' })).toMatchObject({
      ok: false,
      issues: [{ path: 'part' }],
    });
  });

  it('is the same for the same seed and another for another', () => {
    expect(classSet(wish, PARTS)).toEqual(classSet(wish, PARTS));
    expect(classSet({ ...wish, seed: 'spring' }, PARTS)).not.toEqual(classSet(wish, PARTS));
  });

  it('is kept whole or not at all', async () => {
    const set = await got(desk.makeSet(wish));
    expect(new Set(set.map(({ public: { id } }) => id)).size).toBe(24);
    await got(desk.keepAll(set));
    expect(await desk.keepAll(set)).toMatchObject({ ok: false });
    expect(await boardJobs(store, PARTS)).toHaveLength(24);
  });

  it('says what is wrong with a wish', () => {
    expect(desk.makeSet({ ...wish, seats: 0, seed: ' ' })).toMatchObject({
      ok: false,
      issues: [{ path: 'seats' }, { path: 'seed' }],
    });
  });
});
