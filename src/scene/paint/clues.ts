import type { Clue } from '../../bench/observation.ts';
import type { Pen } from '../pen.ts';
import {
  blackenedBulb,
  brokenFilament,
  burntPigtail,
  crackedHandle,
  darkenedInsulator,
  frayedCable,
  looseFieldCoil,
} from './cluesOfBench.ts';
import {
  bridge,
  brightSolder,
  brokenPigtail,
  burntBarEdge,
  charredInsulation,
  dirt,
  looseRivet,
  rubbedCore,
  solderThrown,
  wornSurface,
} from './cluesOfParts.ts';

const PAINTERS: Readonly<Record<Clue, (pen: Pen, r: number) => void>> = {
  brightSolder,
  solderThrown,
  burntBarEdge,
  metalAcrossMica: (pen, r) => bridge(pen, r, false),
  carbonAcrossMica: (pen, r) => bridge(pen, r, true),
  charredInsulation,
  rubbedCore,
  dirt,
  wornSurface,
  looseRivet,
  brokenPigtail,
  burntPigtail,
  charredFieldCoil: charredInsulation,
  looseFieldCoil,
  darkenedInsulator,
  crackedHandle,
  frayedCable,
  brokenFilament,
  blackenedBulb,
};

/** Draws a clue so that it can be told from every other by its shape. */
export function paintClue(pen: Pen, r: number, clue: Clue): void {
  PAINTERS[clue](pen, r);
}
