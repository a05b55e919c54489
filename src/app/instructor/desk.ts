import { ARMATURE_TESTS } from '../../bench/paper.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { JOB_PLATES } from '../../engine/parts/brushPlate.ts';
import { JOB_FRAMES } from '../../engine/parts/fieldFrameDesigns.ts';
import { coilPlaces } from '../../engine/parts/winding.ts';
import { difficulties } from '../../scenario/generate.ts';
import { parseNewJob, parseScenario, parseScenarioText } from '../../scenario/parse.ts';
import { armatureView, frameView, plateView } from '../../scenario/public/view.ts';
import {
  type PartLibrary,
  SCENARIO_FORMAT,
  SCENARIO_VERSION,
  type Scenario,
  type ScenarioPublic,
} from '../../scenario/scenario.ts';
import type { InstructorDesk, MadeJob, PartType } from '../../screens/instructor/desk.ts';
import type { Store } from '../../store/store.ts';
import { guarded, now, right, wrong } from '../assessor/answers.ts';
import type { Library } from '../library.ts';
import { createSafe } from '../safe.ts';
import { classSet, wishIssues } from './classSet.ts';
import { countReadings, solveEffects } from './solving.ts';

export interface InstructorDeskInput {
  readonly library: Library;
  readonly store: Store;
}

/** Everything the instructor's screens ask for, answered from this browser. */
export function createInstructorDesk({ library, store }: InstructorDeskInput): InstructorDesk {
  const { parts } = library;
  const stored = async (id: string) => {
    const { value, revision } = await store.jobs.read(id);
    const scenario = parseScenario(value, parts);
    return scenario.ok ? right({ scenario: scenario.value, revision }) : scenario;
  };
  const keep = (scenario: Scenario, since: number) =>
    store.jobs.put(
      { id: scenario.public.id, title: scenario.public.card.unit, changedAt: now(), value: scenario },
      since,
    );
  const freeId = async () => {
    const kept = await store.jobs.list();
    const taken = new Set([...library.scenarios.keys(), ...kept.map(({ id }) => id)]);
    for (;;) {
      const id = `q-${drawn(0x1000000).toString(16).padStart(6, '0')}`;
      if (!taken.has(id)) return id;
    }
  };
  /** Keeps a job under an id of its own. @returns the id */
  const keepNew = async (scenario: Scenario) => {
    const id = await freeId();
    await keep({ ...scenario, public: { ...scenario.public, id } }, 0);
    return right(id);
  };

  return {
    partTypes: [...parts.values()].map(partType),
    safe: createSafe(store, parts),
    frameTypes: [...JOB_FRAMES.keys()].flatMap((id) => frameView(id) ?? []),
    plateTypes: [...JOB_PLATES.keys()].flatMap((id) => plateView(id) ?? []),
    jobs: () => guarded(async () => right(await made(store, library))),
    begin: (part) => guarded(async () => keepNew(blank(part))),
    job: (id) => guarded(() => stored(id)),
    check: (draft) => parseNewJob(draft, parts),
    effects: (scenario) =>
      guarded(async () => {
        const read = parseScenario(scenario, parts);
        if (!read.ok) return read;
        return right(await solveEffects(read.value, parts.get(read.value.public.armature)!));
      }),
    readingsToProve: (scenario) =>
      guarded(async () => {
        const read = parseScenario(scenario, parts);
        if (!read.ok) return read;
        return right(await countReadings(read.value, parts.get(read.value.public.armature)!));
      }),
    save: (scenario, since) =>
      guarded(async () => {
        const read = parseNewJob(scenario, parts);
        return read.ok ? right(await keep(read.value, since)) : read;
      }),
    duplicate: (id) =>
      guarded(async () => {
        const read = await stored(id);
        return read.ok ? keepNew(read.value.scenario) : read;
      }),
    remove: (id) =>
      guarded(async () => {
        await store.jobs.remove(id);
        return right(null);
      }),
    file: (scenario) => {
      const read = parseNewJob(scenario, parts);
      if (!read.ok) return read;
      const { id } = read.value.public;
      return right({ name: `${id}.json`, text: `${JSON.stringify(read.value, null, 2)}\n` });
    },
    open: (file) =>
      guarded(async () => {
        const read = parseScenarioText(await file.text(), parts);
        if (!read.ok) return read;
        const { id } = read.value.public;
        const kept = await store.jobs.list();
        if (library.scenarios.has(id) || kept.some((one) => one.id === id)) return keepNew(read.value);
        await keep(read.value, 0);
        return right(id);
      }),
    makeSet: (wish) => {
      const issues = wishIssues(wish, parts);
      return issues.length > 0 ? { ok: false, issues } : right(classSet(wish, parts));
    },
    keepAll: (scenarios) =>
      guarded(async () => {
        const kept = new Set((await store.jobs.list()).map(({ id }) => id));
        const twice = scenarios.filter(({ public: { id } }) => kept.has(id) || library.scenarios.has(id));
        if (twice.length > 0)
          return wrong(
            '',
            `${twice.map(({ public: { id } }) => id).join(', ')} already on the board: nothing was added. Choose another seed.`,
          );
        for (const scenario of scenarios) await keep(scenario, 0);
        return right(null);
      }),
  };
}

function partType(design: ArmatureDesign): PartType {
  return {
    view: armatureView(design),
    turns: design.turns,
    coils: coilPlaces(design),
    difficulties: difficulties(design),
  };
}

/** An even draw below a limit, from the browser's own source of chance. */
function drawn(below: number): number {
  return crypto.getRandomValues(new Uint32Array(1))[0]! % below;
}

async function made(store: Store, { parts }: Library): Promise<MadeJob[]> {
  const kept = [...(await store.jobs.list())].sort((a, b) => b.changedAt.localeCompare(a.changedAt));
  const read = await Promise.all(
    kept.map(async ({ id, changedAt }) => {
      const job = parseScenario((await store.jobs.read(id)).value, parts);
      if (!job.ok) return [];
      const { public: shown, hidden } = job.value;
      const lists = [hidden.armature, hidden.fieldFrame, hidden.brushPlate, hidden.bench];
      const faults = lists.reduce((sum, part) => sum + (part?.faults.length ?? 0), 0);
      const partName = partNames(shown, parts);
      return [{ id, unit: shown.card.unit, mode: shown.mode, partName, faults, changedAt }];
    }),
  );
  return read.flat();
}

/** Names of what is to be judged. */
function partNames(shown: ScenarioPublic, parts: PartLibrary): string {
  const names = { armature: parts.get(shown.armature)?.name, ...matNames(shown) };
  return shown.parts.flatMap((part) => names[part] ?? []).join('; ');
}

function matNames({ fieldFrame, brushPlate }: ScenarioPublic) {
  return { fieldFrame: frameView(fieldFrame)?.name, brushPlate: plateView(brushPlate)?.name };
}

function blank(part: string): Scenario {
  return {
    format: SCENARIO_FORMAT,
    version: SCENARIO_VERSION,
    public: {
      id: 'new',
      workshop: 'Quarry Road Training Workshop',
      card: {
        unit: 'Starter motor',
        broughtInBy: 'The stores',
        complaint: 'In for its yearly look.',
        askedFor: 'Test the armature and write up what you find.',
      },
      mains: '230V50Hz',
      parts: ['armature'],
      armature: part,
      tests: [...ARMATURE_TESTS],
      mode: 'practice',
      minutes: null,
    },
    hidden: {
      armature: { faults: [] },
      startRotationDeg: drawn(360),
      seed: drawn(0xffffffff),
      supplyReference: 'floating',
    },
  };
}
