import type { Action } from '../bench/action.ts';
import type { BenchSnapshot } from '../bench/machine.ts';
import { minutesOf } from '../bench/memory.ts';
import type { Mode, Outcome } from '../bench/port.ts';
import { type BenchState, unattended } from '../bench/state.ts';
import { benchState, nextBench, startBench } from '../bench/step.ts';
import { targetDeflection } from '../engine/instruments/ammeter.ts';
import { AMBIENT_K } from '../engine/instruments/lamp.ts';
import { type NeedleState, retarget } from '../engine/instruments/needle.ts';
import { ROOM_C } from '../engine/instruments/thermal.ts';
import { type Condition, conditionAfter, firstCondition, isDirty, zeroOffset } from './condition.ts';
import { type Contacts, contactsAfter, NO_CONTACTS } from './contacts.ts';
import { DROP_IDLE, type DropShown, dropShown } from './drop.ts';
import { DEAD, type Electrics, solveElectrics } from './electrics.ts';
import type { Happened } from './entry.ts';
import type { PartOnBench } from './part.ts';
import { passMinutes } from './pass.ts';
import type { Lying } from './paths.ts';
import { TESTER_IDLE, type TesterCircuit, testerAfter } from './tester.ts';

/** The simulated bench at one instant; never changed, only followed by another. */
export interface World {
  readonly atMs: number;
  readonly bench: BenchSnapshot;
  readonly state: BenchState;
  readonly condition: Condition;
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
  readonly tester: TesterCircuit;
  readonly drop: DropShown;
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
    kit: part.kit,
  });
  const condition = firstCondition(part.hidden, part.design.commutatorRadius);
  return {
    atMs: 0,
    bench,
    state: benchState(bench),
    condition,
    contacts: NO_CONTACTS,
    electrics: DEAD,
    windingC: ROOM_C,
    coilRiseK: part.coilKg.map(() => 0),
    filamentK: AMBIENT_K,
    filamentSettled: true,
    needle: needleLeftAt(zeroOffset(condition)),
    needleSinceMs: 0,
    tester: TESTER_IDLE,
    drop: DROP_IDLE,
    idleSinceMs: null,
    told: { idle: false, growler: false, part: false },
    happened: [],
  };
}

/** A needle that has hung there since yesterday. */
function needleLeftAt(offset: number): NeedleState {
  return { fromDeflection: Math.max(0, offset), fromRate: 0, target: offset };
}

/** Acts of eye and pen, which leave a humming bench as idle as it was. */
const HANDS_OFF: ReadonlySet<Action['type']> = new Set([
  'lens.look',
  'prepare.check',
  'sheet.write',
  'verdict.write',
]);

/** The world after an act that goes through, at the same instant. @param outcome  as the act was judged */
export function afterAct(part: PartOnBench, world: World, action: Action, outcome: Outcome): World {
  const bench = nextBench(world.bench, action, { stood: world.state, outcome });
  const restarts = !HANDS_OFF.has(action.type);
  const condition = conditionAfter(world.condition, action, part.limits);
  const done = { ...world, bench, condition, idleSinceMs: restarts ? null : world.idleSinceMs };
  return settle(part, passMinutes(part, done, minutesOf(action)));
}

/** Brings contacts, circuits and needle into line with the statechart at this instant. */
export function settle(part: PartOnBench, world: World): World {
  const state = benchState(world.bench);
  const scatter = { seed: part.hidden.seed, dirty: isDirty(world.condition) };
  const contacts = contactsAfter(world.contacts, world.state.leads, state.leads, scatter);
  const { condition, coilRiseK } = world;
  const lying: Lying = { part, condition, state, coilRiseK };
  const tester = testerAfter(world.tester, lying, world.atMs);
  const seen = { tester, drop: dropShown(lying), ...idling(world, state) };
  return resolve(part, { ...world, state, contacts, ...seen });
}

/** Solves the circuits for how warm everything is and hands the result to needle and lamp. */
export function resolve(part: PartOnBench, world: World): World {
  const electrics = solveElectrics(lie(part, world), world.contacts, world, world.electrics);
  return { ...world, electrics, filamentSettled: false, ...pullNeedle(part, world, electrics) };
}

function lie(part: PartOnBench, { condition, state, coilRiseK }: World): Lying {
  return { part, condition, state, coilRiseK };
}

function pullNeedle(
  part: PartOnBench,
  { atMs, needle, needleSinceMs, state, condition }: World,
  { meterA }: Electrics,
): Pick<World, 'needle' | 'needleSinceMs'> {
  const meter = { ...part.ammeter, zeroOffset: zeroOffset(condition) };
  const target = targetDeflection(meterA, state.rangeA, meter);
  if (target === needle.target) return { needle, needleSinceMs };
  return { needle: retarget(needle, atMs - needleSinceMs, target), needleSinceMs: atMs };
}

function idling({ atMs, idleSinceMs, told }: World, state: BenchState): Pick<World, 'idleSinceMs' | 'told'> {
  if (state.supply !== 'on' || !unattended(state))
    return { idleSinceMs: null, told: { ...told, idle: false } };
  if (idleSinceMs !== null) return { idleSinceMs, told };
  return { idleSinceMs: atMs, told: { ...told, idle: false } };
}
