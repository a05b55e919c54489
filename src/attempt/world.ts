import type { Action } from '../bench/action.ts';
import type { BenchSnapshot } from '../bench/machine.ts';
import type { Mode } from '../bench/port.ts';
import { type BenchState, unattended } from '../bench/state.ts';
import { benchState, nextBench, startBench } from '../bench/step.ts';
import { targetDeflection } from '../engine/instruments/ammeter.ts';
import { AMBIENT_K } from '../engine/instruments/lamp.ts';
import { NEEDLE_AT_ZERO, type NeedleState, retarget } from '../engine/instruments/needle.ts';
import { ROOM_C } from '../engine/instruments/thermal.ts';
import { type Contacts, contactsAfter, NO_CONTACTS } from './contacts.ts';
import { DEAD, type Electrics, solveElectrics } from './electrics.ts';
import type { Happened } from './entry.ts';
import type { PartOnBench } from './part.ts';

/** The simulated bench at one instant; never changed, only followed by another. */
export interface World {
  readonly atMs: number;
  readonly bench: BenchSnapshot;
  readonly state: BenchState;
  readonly contacts: Contacts;
  readonly electrics: Electrics;
  /** Temperature of the growler winding at the last thermal step, degrees C. */
  readonly windingC: number;
  /** Rise of each coil of the part above the room at the last thermal step, K. */
  readonly coilRiseK: readonly number[];
  /** Temperature of the lamp's filament at the last filament step, K, and whether it has stopped changing. */
  readonly filamentK: number;
  readonly filamentSettled: boolean;
  readonly needle: NeedleState;
  readonly needleSinceMs: number;
  /** Since when the bench has stood on with nobody's hand on it. */
  readonly idleSinceMs: number | null;
  /** Spells already told of, so that each is told once. */
  readonly told: { readonly idle: boolean; readonly growler: boolean; readonly part: boolean };
  /** What has come about by itself so far. */
  readonly happened: readonly Happened[];
}

export function firstWorld(part: PartOnBench, mode: Mode): World {
  const bench = startBench({
    mode,
    geometry: part.geometry,
    startRotationDeg: part.hidden.startRotationDeg,
  });
  return {
    atMs: 0,
    bench,
    state: benchState(bench),
    contacts: NO_CONTACTS,
    electrics: DEAD,
    windingC: ROOM_C,
    coilRiseK: part.coilKg.map(() => 0),
    filamentK: AMBIENT_K,
    filamentSettled: true,
    needle: NEEDLE_AT_ZERO,
    needleSinceMs: 0,
    idleSinceMs: null,
    told: { idle: false, growler: false, part: false },
    happened: [],
  };
}

/** Acts of eye and pen, which leave a humming bench as idle as it was. */
const HANDS_OFF: ReadonlySet<Action['type']> = new Set(['lens.look', 'sheet.write', 'verdict.write']);

/** The world after an act that goes through, at the same instant. */
export function afterAct(part: PartOnBench, world: World, action: Action): World {
  const bench = nextBench(world.bench, action);
  const restarts = !HANDS_OFF.has(action.type);
  return settle(part, { ...world, bench, idleSinceMs: restarts ? null : world.idleSinceMs });
}

/** Brings contacts, circuits and needle into line with the statechart at this instant. */
export function settle(part: PartOnBench, world: World): World {
  const state = benchState(world.bench);
  const scatter = { seed: part.hidden.seed, dirty: part.dirty };
  const contacts = contactsAfter(world.contacts, world.state.leads, state.leads, scatter);
  const now = { ...world, state, contacts, ...idling(world, state) };
  return resolve(part, now, world.windingC);
}

/** Solves the circuits for a temperature of the growler winding and hands the result to needle and lamp. */
export function resolve(part: PartOnBench, world: World, windingC: number): World {
  const { state, contacts, electrics: last } = world;
  const electrics = solveElectrics(part, state, contacts, windingC, last);
  return { ...world, electrics, filamentSettled: false, ...pullNeedle(part, world, electrics) };
}

function pullNeedle(
  part: PartOnBench,
  { atMs, needle, needleSinceMs, state }: World,
  { meterA }: Electrics,
): Pick<World, 'needle' | 'needleSinceMs'> {
  const target = targetDeflection(meterA, state.rangeA, part.ammeter);
  if (target === needle.target) return { needle, needleSinceMs };
  return { needle: retarget(needle, atMs - needleSinceMs, target), needleSinceMs: atMs };
}

function idling({ atMs, idleSinceMs, told }: World, state: BenchState): Pick<World, 'idleSinceMs' | 'told'> {
  if (state.supply !== 'on' || !unattended(state))
    return { idleSinceMs: null, told: { ...told, idle: false } };
  if (idleSinceMs !== null) return { idleSinceMs, told };
  return { idleSinceMs: atMs, told: { ...told, idle: false } };
}
