import type { WitnessGroup } from './case.ts';
import { body } from './cases/body.ts';
import { circuitLive } from './cases/circuitLive.ts';
import { circuitStored } from './cases/circuitStored.ts';
import { copper } from './cases/copper.ts';
import { coupledCoils } from './cases/coupledCoils.ts';
import { inductance } from './cases/inductance.ts';
import { instruments } from './cases/instruments.ts';
import { lamp } from './cases/lamp.ts';
import { fields } from './cases/leakage.ts';
import { places } from './cases/places.ts';
import { resistance } from './cases/resistance.ts';
import { saturation } from './cases/saturation.ts';
import { strip } from './cases/stripForce.ts';
import { trade } from './cases/trade.ts';
import { tradeOthers } from './cases/tradeOthers.ts';
import { vibration } from './cases/vibration.ts';
import { winding } from './cases/winding.ts';

/** Every objective test of the engine. The `witness` command and the test run take them from here. */
export const WITNESS_GROUPS: readonly WitnessGroup[] = [
  copper,
  winding,
  resistance,
  coupledCoils,
  circuitStored,
  circuitLive,
  inductance,
  saturation,
  strip,
  vibration,
  fields,
  lamp,
  instruments,
  body,
  places,
  trade,
  tradeOthers,
];
