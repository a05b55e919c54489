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

describe('a set for a class', () => {
  const wish: SetWish = {
    ...{ seed: 'autumn', seats: 24, perRow: 4, part: 'wave-23', difficulty: 'medium' },
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
