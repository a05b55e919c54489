import { type Happening, IDLE_MS } from '../bench/happening.ts';
import { breachesOf } from '../bench/interlocks.ts';
import { nextBench } from '../bench/step.ts';
import {
  AMBIENT_K,
  DRAPER_K,
  FILAMENT_STEP_MS,
  FULL_GLOW,
  filamentLossW,
  glow,
  heatCapacity,
  type LampCircuit,
  type LampType,
  stepFilament,
} from '../engine/instruments/lamp.ts';
import {
  growlerHeat,
  partHeat,
  REARM_C,
  stepCoil,
  stepWinding,
  THERMAL_STEP_MS,
  TRIP_C,
} from '../engine/instruments/thermal.ts';
import { lampTipsTogether } from './contacts.ts';
import { hasDrifted } from './electrics.ts';
import type { PartOnBench } from './part.ts';
import { resolve, settle, type World } from './world.ts';

/** Change over one filament step below which it counts as settled, K. */
const FILAMENT_SETTLED_K = 1e-4;
/** Nearness to the room at which a filament counts as cold, K. */
const COLD_FILAMENT_K = 0.5;
/** Rise below which an unloaded coil counts as cold, K. */
const COLD_K = 0.01;

/**
 * The world at a later instant when nobody does anything in between. All steps lie on grids of absolute simulated
 * time, so it is the same world whether one goes there at once or stops to look on the way.
 */
export function advance(part: PartOnBench, world: World, toMs: number): World {
  let now = world;
  for (;;) {
    const thermalMs = (Math.floor(now.atMs / THERMAL_STEP_MS) + 1) * THERMAL_STEP_MS;
    if (thermalMs > toMs) return { ...burn(part, now, toMs), atMs: toMs };
    now = heat(part, burn(part, now, thermalMs), thermalMs);
  }
}

/** Filament steps after the instant of the world up to and with `untilMs`; the clock is left to the caller. */
function burn(part: PartOnBench, world: World, untilMs: number): World {
  const { lamp } = world.electrics;
  let { filamentK, filamentSettled } = world;
  let tick = Math.floor(world.atMs / FILAMENT_STEP_MS) + 1;
  for (; tick * FILAMENT_STEP_MS <= untilMs; tick += 1) {
    if (filamentSettled || coolsInTheDark(lamp, filamentK)) break;
    const next = stepFilament(part.lamp, filamentK, lamp, 1);
    filamentSettled = Math.abs(next - filamentK) < FILAMENT_SETTLED_K;
    if (!filamentSettled) filamentK = next;
    if (provesLamp(world, filamentK)) {
      const atMs = tick * FILAMENT_STEP_MS;
      return burn(part, happen(part, { ...world, atMs, filamentK, filamentSettled }, PROVED), untilMs);
    }
  }
  const rests = filamentK === world.filamentK && filamentSettled === world.filamentSettled;
  return rests ? world : { ...world, filamentK, filamentSettled };
}

const PROVED: Happening = { type: 'lamp.proved' };

/** A filament nobody can see any more and that carries nothing goes by the slow steps of the winding. */
function coolsInTheDark({ path }: LampCircuit, filamentK: number): boolean {
  return path === null && filamentK < DRAPER_K;
}

/** One thermal step of such a filament: C dT/dt = -P(T), by the midpoint. */
function cooled(lamp: LampType, filamentK: number): number {
  if (filamentK <= AMBIENT_K) return filamentK;
  const fallK = (tempK: number) =>
    ((filamentLossW(lamp, tempK) / heatCapacity(lamp)) * THERMAL_STEP_MS) / 1000;
  const next = filamentK - fallK(filamentK - fallK(filamentK) / 2);
  return next < AMBIENT_K + COLD_FILAMENT_K ? AMBIENT_K : next;
}

/** A lamp is proved by its full light between its own two tips. */
function provesLamp({ state }: World, filamentK: number): boolean {
  const live = state.supply === 'on' && state.selector === 'low';
  return live && state.lamp !== 'proved' && lampTipsTogether(state.leads) && glow(filamentK) === FULL_GLOW;
}

/** One thermal step, ending at an instant, and what follows from it. */
function heat(part: PartOnBench, world: World, atMs: number): World {
  const { growler, coilW } = world.electrics;
  const winding = { windingC: world.windingC, cutOut: growler === null };
  const { windingC } = stepWinding(winding, () => growler?.lossW ?? 0, 1);
  const coilRiseK = heatCoils(part, world.coilRiseK, coilW);
  const dark = coolsInTheDark(world.electrics.lamp, world.filamentK);
  const filamentK = dark ? cooled(part.lamp, world.filamentK) : world.filamentK;
  const warmer = spells({ ...world, atMs, windingC, coilRiseK, filamentK });
  const told = dueHappenings(warmer).reduce((now, what) => happen(part, now, what), warmer);
  return hasDrifted(told.electrics, told) ? resolve(part, told) : told;
}

function heatCoils(
  part: PartOnBench,
  coilRiseK: readonly number[],
  coilW: Float64Array | null,
): readonly number[] {
  if (coilW === null && coilRiseK.every((rise) => rise < COLD_K)) {
    return coilRiseK.some((rise) => rise !== 0) ? coilRiseK.map(() => 0) : coilRiseK;
  }
  return coilRiseK.map((rise, coil) => stepCoil(rise, coilW?.[coil] ?? 0, part.coilKg[coil]!, 1));
}

/** Forgets what was told of a spell of heat once it is over. */
function spells(world: World): World {
  const growler = world.told.growler && growlerHeat(world.windingC) === 'tooHotToTouch';
  const part = world.told.part && hottest(world) === 'smoking';
  return growler === world.told.growler && part === world.told.part
    ? world
    : { ...world, told: { ...world.told, growler, part } };
}

function hottest({ coilRiseK }: World): ReturnType<typeof partHeat> {
  return partHeat(Math.max(...coilRiseK));
}

/** What comes about at a thermal step, in the order it is told. */
function dueHappenings(world: World): Happening[] {
  const { state, windingC, told, idleSinceMs, atMs } = world;
  const on = state.supply === 'on';
  const due: Happening[] = [];
  if (on && !told.growler && growlerHeat(windingC) === 'tooHotToTouch') {
    due.push({ type: 'bench.overheated', what: 'growler' });
  }
  if (on && !told.part && hottest(world) === 'smoking') due.push({ type: 'bench.overheated', what: 'part' });
  if (idleSinceMs !== null && !told.idle && atMs - idleSinceMs >= IDLE_MS) due.push({ type: 'bench.idle' });
  if (on && windingC >= TRIP_C) due.push({ type: 'bench.tripped' });
  if (state.cutOut === 'tripped' && windingC <= REARM_C) due.push({ type: 'bench.cooled' });
  return due;
}

function happen(part: PartOnBench, world: World, what: Happening): World {
  const breaches = breachesOf(world.state, what);
  const told = {
    idle: world.told.idle || what.type === 'bench.idle',
    growler: world.told.growler || (what.type === 'bench.overheated' && what.what === 'growler'),
    part: world.told.part || (what.type === 'bench.overheated' && what.what === 'part'),
  };
  const happened = [...world.happened, { atMs: world.atMs, what, breaches }];
  return settle(part, { ...world, told, happened, bench: nextBench(world.bench, what) });
}
