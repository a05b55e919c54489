import { DROP_SPREAD, MEGOHM_SPREAD } from '../../../assess/evidence/mat/likelihood.ts';
import type { MatQuestion, MatReading, MatShown } from '../../../assess/evidence/mat/reading.ts';
import type { Source } from '../../../assess/evidence/reading.ts';
import { DROP_RANGE_MV, MEGOHM_RANGE, TOOL_SLIP } from '../../../assess/evidence/toolNoise.ts';
import { seeMegohms } from '../../../engine/instruments/insulationTester.ts';
import type { Draw } from '../part.ts';

/** Of the spread the engine believes in, the rest lies between its listed severities. */
const OF_SPREAD = 0.8;

/**
 * A reading with the errors the engine believes in.
 * @param scatter spread against the believed one
 */
export function readOff(
  question: MatQuestion,
  shown: MatShown,
  entry: number,
  { from, scatter, draw }: { readonly from: Source; readonly scatter: number; readonly draw: Draw },
): MatReading {
  const slips = draw() < TOOL_SLIP[from];
  const spread = OF_SPREAD * scatter * normal(draw);
  if (question.kind === 'lamp' && shown.kind === 'lamp')
    return { ...question, entry, lit: slips ? !shown.lit : shown.lit };
  if (question.kind === 'drop' && shown.kind === 'drop') {
    const millivolts = slips ? DROP_RANGE_MV * draw() : shown.millivolts * (1 + DROP_SPREAD * spread);
    return { ...question, entry, millivolts: Number(millivolts.toFixed(from === 'sheet' ? 1 : 2)) };
  }
  if (question.kind !== 'megohm' || shown.kind !== 'megohm') throw new Error('shown is not what was asked');
  if (shown.over && !slips) return { ...question, entry, megohms: 'over' };
  const mohm = slips
    ? 1e-3 * Math.exp(MEGOHM_RANGE * draw())
    : shown.megohms * Math.exp(MEGOHM_SPREAD * spread);
  const { megohms, over } = seeMegohms(1e6 * mohm);
  return { ...question, entry, megohms: over ? 'over' : megohms };
}

/** One draw of the normal distribution: twelve even ones added up. */
function normal(draw: Draw): number {
  let sum = -6;
  for (let k = 0; k < 12; k++) sum += draw();
  return sum;
}
