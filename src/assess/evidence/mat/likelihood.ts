import { CLUES } from '../../../bench/observation.ts';
import type { Place } from '../../../bench/places.ts';
import type { Mains } from '../../../engine/drive.ts';
import { seeMegohms, type TestVolt, terminalVolt } from '../../../engine/instruments/insulationTester.ts';
import { seeMillivolts } from '../../../engine/instruments/millivoltDrop.ts';
import type { Sign } from '../../../scenario/hidden/sign.ts';
import { lampLit } from '../../diagnosis/shown.ts';
import { CLUES_AT_MOST } from '../clues.ts';
import type { Source } from '../reading.ts';
import type { MatDrop, MatLamp, MatLooks, MatMegohms, MatReading } from './reading.ts';

/** How well what a state would show explains what was read, as logarithms. Figures ours, no source. */

/** Share of readings that are simply mistaken. */
const SLIP: Readonly<Record<Source, number>> = { instrument: 0.0003, sheet: 0.002 };
/** Spread of a resistance read off the tester, on the logarithm; half a step of the severities. */
const MEGOHM_SPREAD = 0.13;
const MEGOHM_STEP = 0.01;
/** Spread of a drop, as a share, and the least, mV. */
const DROP_SPREAD = 0.025;
const DROP_STEP_MV = 0.02;
/** Range over which a slip may put a reading: decades of resistance on the natural logarithm; mV. */
const MEGOHM_RANGE = 15;
const DROP_RANGE_MV = 200;
/** A smear, a false lead: any clue may be seen anywhere. */
const ANYWHERE = 0.02;

const gauss = (off: number, spread: number) =>
  Math.exp(-0.5 * (off / spread) ** 2) / (spread * Math.sqrt(2 * Math.PI));

/** Largest resistance over which the lamp is seen to glow, ohm. */
export function lampReach(mains: Mains): number {
  let [lit, dark] = [0, 1e9];
  for (let halved = 0; halved < 60; halved++) {
    const middle = (lit + dark) / 2;
    if (lampLit(middle, mains)) lit = middle;
    else dark = middle;
  }
  return lit;
}

export function lampLog({ lit }: MatLamp, ohm: number | null, reach: number, from: Source): number {
  const would = ohm !== null && ohm <= reach;
  return Math.log(would === lit ? 1 - SLIP[from] : SLIP[from]);
}

/** @param at resistance between the leads at a peak voltage, ohm; null: none */
export function megohmLog(
  { megohms, volt }: Pick<MatMegohms, 'megohms' | 'volt'>,
  at: (peakV: number) => number | null,
  from: Source,
): number {
  const shown = megohmsAt(at, volt);
  const slip = SLIP[from];
  if (megohms === 'over' || shown.over) {
    const both = megohms === 'over' && shown.over;
    return Math.log(both ? 1 - slip : megohms === 'over' ? slip : slip / MEGOHM_RANGE);
  }
  const off = Math.log((megohms + MEGOHM_STEP) / (shown.megohms + MEGOHM_STEP));
  return Math.log((1 - slip) * gauss(off, MEGOHM_SPREAD) + slip / MEGOHM_RANGE);
}

function megohmsAt(at: (peakV: number) => number | null, volt: TestVolt) {
  return seeMegohms(at(terminalVolt(volt, at(0))) ?? Number.POSITIVE_INFINITY);
}

/** @param volt drop there would be, V; null: the feed finds no way */
export function dropLog({ millivolts }: MatDrop, volt: number | null, from: Source): number {
  const shown = seeMillivolts(volt).millivolts;
  const spread = Math.max(DROP_STEP_MV, DROP_SPREAD * shown);
  return Math.log((1 - SLIP[from]) * gauss(millivolts - shown, spread) + SLIP[from] / DROP_RANGE_MV);
}

/** Of something that is none of the things listed any reading may be expected. */
export function anyLog(readings: readonly MatReading[]): number {
  const each = { lamp: 0.5, megohm: 1 / MEGOHM_RANGE, drop: 1 / DROP_RANGE_MV };
  return readings.reduce((sum, { kind }) => sum + Math.log(each[kind]), 0);
}

/**
 * How much better the signs of a fault explain what the lens showed than a part without fault does, as a logarithm.
 * Clues are not verdicts: they never weigh more than a certain amount.
 * @param everyday signs a sound place shows too
 */
export function looksLog(
  signs: readonly Sign[],
  everyday: (place: Place) => readonly Sign[],
  looks: MatLooks,
): number {
  let log = 0;
  for (const { place, clue, chance } of signs) {
    const sees = looks.get(place);
    if (sees === undefined || !CLUES.includes(clue)) continue;
    const own = everyday(place).find((sign) => sign.clue === clue)?.chance ?? 0;
    const plain = 1 - (1 - own) * (1 - ANYWHERE);
    const shown = 1 - (1 - plain) * (1 - chance);
    log += sees.includes(clue) ? Math.log(shown / plain) : Math.log((1 - shown) / (1 - plain));
  }
  return Math.min(CLUES_AT_MOST, log);
}
