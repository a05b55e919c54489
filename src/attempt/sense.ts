import type { Observation, StripView } from '../bench/observation.ts';
import { hum } from '../engine/instruments/hum.ts';
import { glow } from '../engine/instruments/lamp.ts';
import { atRest, seeNeedle } from '../engine/instruments/needle.ts';
import { growlerHeat, partHeat } from '../engine/instruments/thermal.ts';
import { cluesAt } from '../scenario/hidden/looks.ts';
import { sinceThen } from './condition.ts';
import type { Sensed } from './entry.ts';
import { seeGauge } from './gauges.ts';
import type { PartOnBench } from './part.ts';
import { seeTester, testerDisplay, testerStirs } from './tester.ts';
import type { World } from './world.ts';

/** What eyes, ears and fingers have of the world. */
export function observe(part: PartOnBench, world: World): Observation {
  const { state, bench } = world;
  return {
    atMs: world.atMs,
    selector: state.selector,
    rangeA: state.rangeA,
    cradle: state.cradle,
    hands: [{ holds: state.hands[0] }, { holds: state.hands[1] }],
    leads: state.leads,
    strip: stripView(world),
    partHeat: partHeat(Math.max(...world.coilRiseK)),
    chalkedBar: state.chalkedBar,
    look:
      state.looksAt === null
        ? null
        : {
            place: state.looksAt,
            sees: cluesAt(part.hidden, part.design, state.looksAt, sinceThen(world.condition)),
          },
    stopped: bench.context.stoppedBy === null ? null : { sentence: bench.context.stoppedBy.sentence },
    ...instruments(part, world),
    mat: state.mat,
    brushesApart: state.brushesApart,
    gauge: state.gauge === null ? null : seeGauge(state.gauge, world.condition.wear),
    tester: seeTester(world.tester, state, world.atMs),
    drop: { ...state.drop, ...world.drop },
    minutesSpent: state.memory.minutesSpent,
    prepared: state.prepared,
    scrapped: world.condition.scrapped,
  };
}

/** What is kept beside an entry of the log. */
export function sensed(part: PartOnBench, world: World): Sensed {
  const { pull, buzz } = world.electrics.strip;
  return { ...instruments(part, world), pull, buzz, ...tools(world) };
}

/** The readings of the rail's tools, each only while it shows one. */
function tools({ state, tester, drop, condition, atMs }: World): Pick<Sensed, 'tester' | 'drop' | 'gaugeMm'> {
  const display = testerDisplay(tester, state.tester.volt, atMs);
  return {
    ...(display === null ? {} : { tester: display }),
    ...(state.drop.feed === null ? {} : { drop }),
    ...(state.gauge === null ? {} : { gaugeMm: seeGauge(state.gauge, condition.wear).mm }),
  };
}

function instruments(
  part: PartOnBench,
  world: World,
): Omit<Sensed, 'pull' | 'buzz' | 'tester' | 'drop' | 'gaugeMm'> {
  const { state, electrics } = world;
  const sound = electrics.growler === null ? null : { ...electrics.growler, mainsHz: part.mains.hz };
  return {
    supply: state.supply,
    needle: seenNeedle(world),
    lamp: { glow: glow(world.filamentK) },
    hum: hum(sound, part.mains.hz),
    growlerHeat: growlerHeat(world.windingC),
    rotationDeg: (Math.round(state.rotationDeg * 10) % 3600) / 10,
  };
}

export function seenNeedle({ needle, needleSinceMs, atMs }: World): Observation['needle'] {
  return seeNeedle(needle, atMs - needleSinceMs);
}

function stripView({ state: { strip }, electrics }: World): StripView {
  return { ...strip, pull: electrics.strip.pull, buzz: electrics.strip.buzz };
}

/** How soon the next look could find something new: at once, within a tenth of a second, or not before the next act. */
export function stir(world: World): 'moving' | 'slow' | 'still' {
  if (!atRest(world.needle, world.atMs - world.needleSinceMs) || lampStirs(world)) return 'moving';
  if (testerStirs(world.tester, world.state, world.atMs)) return 'moving';
  const warm = growlerHeat(world.windingC) !== 'cool' || world.coilRiseK.some((rise) => rise > 1);
  return world.state.supply === 'on' || world.state.cutOut === 'tripped' || warm ? 'slow' : 'still';
}

/** A filament that cools in the dark changes nothing an eye sees. */
function lampStirs({ filamentSettled, filamentK, electrics }: World): boolean {
  return !filamentSettled && (electrics.lamp.path !== null || glow(filamentK) > 0);
}
