import type { GaugeKind } from '../bench/action.ts';
import type { GaugeView } from '../bench/observation.ts';
import type { GaugeKept } from '../bench/state.ts';
import type { Wear } from '../engine/parts/wear.ts';

/** What an eye tells apart on calliper, dial, depth gauge and rule, mm. */
const STEP_MM: Readonly<Record<GaugeKind, number>> = {
  diameter: 0.1,
  runOut: 0.01,
  undercut: 0.05,
  brushLength: 0.5,
};

/** The reading of a gauge put to the part. */
export function seeGauge(kept: GaugeKept, wear: Wear): GaugeView {
  const step = STEP_MM[kept.gauge];
  return { ...kept, mm: Number((Math.round(lengthOf(kept, wear) / step) * step).toFixed(2)) };
}

function lengthOf({ gauge, brush }: GaugeKept, wear: Wear): number {
  switch (gauge) {
    case 'diameter':
      return wear.commutatorDiameterMm;
    case 'runOut':
      return wear.runOutMm;
    case 'undercut':
      return wear.undercutMm;
    case 'brushLength':
      return wear.brushLengthsMm[brush ?? 0];
  }
}
