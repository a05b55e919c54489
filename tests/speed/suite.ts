import { LAP_24, LAP_28, WAVE_23 } from '../engine/support/parts.ts';
import { S30_C60, S60_C60 } from './designs.ts';
import { dictionaryOf, everyPair, onePair, onePoint, stripMapOf } from './engine.ts';
import { dropUpdate, evidenceUpdate, nextReading } from './evidence.ts';
import { type Effort, type SpeedRow, THOROUGH } from './measure.ts';
import { replayOf } from './replay.ts';
import { LONG_SWEEPS, type Sweeps, type WitnessSpeed, witnessSpeed } from './witness.ts';

/** How many times longer the witness takes for the same operating point. */
export interface Ratio {
  readonly armature: string;
  /** One pair of bars from both: per frequency of a sweep, and per call. */
  readonly pointToPair: number;
  readonly callToPair: number;
  /** One pair from the witness, every pair from the engine. */
  readonly pointToAll: number;
  readonly callToAll: number;
  /** Relative difference of the two readings of that pair. */
  readonly apart: number;
}

export interface SpeedReport {
  readonly rows: readonly SpeedRow[];
  readonly ratios: readonly Ratio[];
}

/** Ratios wished for. */
export const AIM_POINT = 20;
export const AIM_CALL = 100;

const ARMATURES = [WAVE_23, LAP_24, LAP_28, S30_C60, S60_C60];
const REPLAYED_ACTS = 3000;

export interface Measured {
  readonly effort: Effort;
  readonly sweeps: Sweeps;
  readonly acts: number;
  /** Told of each row as soon as it is measured. */
  readonly told: (row: SpeedRow) => void;
}
const ALL: Measured = { effort: THOROUGH, sweeps: LONG_SWEEPS, acts: REPLAYED_ACTS, told: () => {} };

/** Measures everything in one run, one after another. */
export async function speedReport(choice: Partial<Measured> = {}): Promise<SpeedReport> {
  const { effort, sweeps, acts, told } = { ...ALL, ...choice };
  const rows: SpeedRow[] = [];
  const ratios: Ratio[] = [];
  const take = (row: SpeedRow): SpeedRow => {
    rows.push(row);
    told(row);
    return row;
  };
  for (const a of ARMATURES) {
    const all = take(await everyPair(a, effort));
    const pair = take(await onePair(a, effort));
    const witness = await witnessSpeed(a, effort, sweeps);
    take(witness.perPoint);
    take(witness.perCall);
    ratios.push(ratioOf(a.id, all, pair, witness));
  }
  for (const a of [WAVE_23, LAP_24, LAP_28]) take(await onePoint(a, effort));
  for (const a of [WAVE_23, LAP_24]) take(await dictionaryOf(a, effort));
  take(await dictionaryOf(LAP_28, effort, 1000));
  for (const a of [WAVE_23, LAP_24, LAP_28]) take(await stripMapOf(a, effort));
  take(await evidenceUpdate(LAP_28, effort));
  take(await dropUpdate(LAP_28, effort));
  take(await nextReading(LAP_28, effort));
  take(await replayOf(acts, effort));
  return { rows, ratios };
}

function ratioOf(armature: string, all: SpeedRow, pair: SpeedRow, w: WitnessSpeed): Ratio {
  return {
    armature,
    pointToPair: w.perPoint.ms / pair.ms,
    callToPair: w.perCall.ms / pair.ms,
    pointToAll: w.perPoint.ms / all.ms,
    callToAll: w.perCall.ms / all.ms,
    apart: w.apart,
  };
}
