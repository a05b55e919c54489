import { CLUES } from '../../../bench/observation.ts';
import type { Place } from '../../../bench/places.ts';
import type { Mains } from '../../../engine/drive.ts';
import { seeMegohms, type TestVolt, terminalVolt } from '../../../engine/instruments/insulationTester.ts';
import { seeMillivolts } from '../../../engine/instruments/millivoltDrop.ts';
import type { Sign } from '../../../scenario/hidden/sign.ts';
import { lampLit } from '../../diagnosis/shown.ts';
import { CLUES_AT_MOST } from '../clues.ts';
import type { Source } from '../reading.ts';
import { DROP_RANGE_MV, gauss, MEGOHM_RANGE, TOOL_SLIP } from '../toolNoise.ts';
import type { MatLooks, MatMegohms, MatReading, MatShown } from './reading.ts';

/** How well what a state would show explains what was read, as logarithms. Figures ours, no source. */

/** Spread of a resistance read off the tester, on the logarithm; half a step of the severities. */
export const MEGOHM_SPREAD = 0.13;
const MEGOHM_STEP = 0.01;
/** Spread of a drop, as a share, and the least, mV. */
export const DROP_SPREAD = 0.025;
const DROP_STEP_MV = 0.02;
/** A smear, a false lead: any clue may be seen anywhere. */
const ANYWHERE = 0.02;

/** What the tester shows. @param at resistance between the leads at a peak voltage, ohm; null: none */
export function megohmShown(at: (peakV: number) => number | null, volt: TestVolt): MatShown {
  return { kind: 'megohm', ...seeMegohms(at(terminalVolt(volt, at(0))) ?? Number.POSITIVE_INFINITY) };
}

/** @param volt drop there would be, V; null: the feed finds no way */
export function dropShown(volt: number | null): MatShown {
  return { kind: 'drop', millivolts: seeMillivolts(volt).millivolts };
}

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

/** How well what would be shown explains a reading. */
export function readingLog(reading: MatReading, shown: MatShown, from: Source): number {
  if (reading.kind === 'megohm' && shown.kind === 'megohm') return megohmLog(reading, shown, from);
  if (reading.kind === 'drop' && shown.kind === 'drop') return dropLog(reading.millivolts, shown, from);
  const would = shown.kind === 'lamp' && reading.kind === 'lamp' && shown.lit === reading.lit;
  return Math.log(would ? 1 - TOOL_SLIP[from] : TOOL_SLIP[from]);
}

function megohmLog(
  { megohms }: Pick<MatMegohms, 'megohms'>,
  shown: MatShown & { kind: 'megohm' },
  from: Source,
): number {
  const slip = TOOL_SLIP[from];
  if (megohms === 'over' || shown.over) {
    const both = megohms === 'over' && shown.over;
    return Math.log(both ? 1 - slip : megohms === 'over' ? slip : slip / MEGOHM_RANGE);
  }
  const off = Math.log((megohms + MEGOHM_STEP) / (shown.megohms + MEGOHM_STEP));
  return Math.log((1 - slip) * gauss(off, MEGOHM_SPREAD) + slip / MEGOHM_RANGE);
}

function dropLog(read: number, { millivolts, blur = 0 }: MatShown & { kind: 'drop' }, from: Source): number {
  const spread = Math.hypot(Math.max(DROP_STEP_MV, DROP_SPREAD * millivolts), blur);
  return Math.log((1 - TOOL_SLIP[from]) * gauss(read - millivolts, spread) + TOOL_SLIP[from] / DROP_RANGE_MV);
}

/**
 * Of something that is none of the things listed nobody can work out the readings: a lamp is as soon lit as dark, a
 * tester as soon over range as anywhere on its scale, a drop of any order of magnitude.
 */
export function anyLog(readings: readonly MatReading[]): number {
  return readings.reduce((sum, reading) => sum + Math.log(anyDensity(reading)), 0);
}

const LEAST_DROP_MV = 0.5;

function anyDensity(reading: MatReading): number {
  switch (reading.kind) {
    case 'lamp':
      return 1 / 2;
    case 'megohm':
      return reading.megohms === 'over' ? 1 / 2 : 1 / 2 / MEGOHM_RANGE;
    case 'drop':
      return 1 / Math.log(DROP_RANGE_MV / LEAST_DROP_MV) / Math.max(LEAST_DROP_MV, reading.millivolts);
  }
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
    const sees = looks.get(place)?.sees;
    if (sees === undefined || !CLUES.includes(clue)) continue;
    const own = everyday(place).find((sign) => sign.clue === clue)?.chance ?? 0;
    const plain = 1 - (1 - own) * (1 - ANYWHERE);
    const shown = 1 - (1 - plain) * (1 - chance);
    log += sees.includes(clue) ? Math.log(shown / plain) : Math.log((1 - shown) / (1 - plain));
  }
  return Math.min(CLUES_AT_MOST, log);
}
