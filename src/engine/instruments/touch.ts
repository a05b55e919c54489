import { type Impedance, type LampType, lampCurrent, steadyFilament } from './lamp.ts';

/**
 * Current through a body that touches bare metal joined to a live lamp probe. Computed and shown afterwards only: any
 * such touch is a critical breach whatever the figure, since nobody can see whether the winding floats.
 */

export type Percentile = 5 | 50 | 95;

/**
 * Total body impedance hand to hand, large dry contact, ohm, by touch voltage; 5 / 50 / 95 % of people lie below.
 * @source references S05, S06: IEC 479-1:1994 table 1, through a stored note
 */
const BODY_OHM: readonly { readonly volt: number; readonly ohm: Readonly<Record<Percentile, number>> }[] = [
  { volt: 25, ohm: { 5: 1750, 50: 3250, 95: 6100 } },
  { volt: 50, ohm: { 5: 1450, 50: 2625, 95: 4375 } },
  { volt: 125, ohm: { 5: 1125, 50: 1625, 95: 2875 } },
  { volt: 220, ohm: { 5: 1000, 50: 1350, 95: 2125 } },
];

/** Capacitance of the floating winding and its leads to earth, F: an estimate for the invented bench. */
const FLOATING_CAPACITANCE = 1e-9;

/** Impedance of a body at a touch voltage, ohm; straight lines between the table's voltages, held beyond its ends. */
export function bodyOhm(touchVolt: number, percentile: Percentile = 50): number {
  const last = BODY_OHM[BODY_OHM.length - 1]!;
  let below = BODY_OHM[0]!;
  if (touchVolt <= below.volt) return below.ohm[percentile];
  for (const above of BODY_OHM) {
    if (touchVolt <= above.volt) {
      const share = (touchVolt - below.volt) / (above.volt - below.volt || 1);
      return below.ohm[percentile] + share * (above.ohm[percentile] - below.ohm[percentile]);
    }
    below = above;
  }
  return last.ohm[percentile];
}

export interface Touch {
  readonly lamp: LampType;
  readonly volt: number;
  readonly hz: number;
  /** Whether the isolated winding floats or has found earth at its other end. */
  readonly reference: 'floating' | 'earthed';
  /** `toEarth`: one hand on live metal, the body otherwise on earthed metal; `acrossProbes`: from probe to probe. */
  readonly way: 'toEarth' | 'acrossProbes';
  readonly percentile?: Percentile;
}

/**
 * What a current of 50 or 60 Hz through a body does. Limits: perception 0.5 mA (references S01, IEC 60479-1), let-go
 * 10 mA for adults (S02, from memory), fibrillation possible above about 40 mA for a long touch (S03, from memory).
 */
export type BodyEffect = 'notFelt' | 'felt' | 'cannotLetGo' | 'mayKill';

export interface TouchResult {
  readonly currentA: number;
  readonly touchVolt: number;
  readonly bodyOhm: number;
  readonly effect: BodyEffect;
}

/** The settled current through the body, the lamp in series with it. */
export function touchCurrent(touch: Touch): TouchResult {
  const capacitive = touch.reference === 'floating' && touch.way === 'toEarth';
  const reactance = capacitive ? 1 / (2 * Math.PI * touch.hz * FLOATING_CAPACITANCE) : 0;
  // Body impedance falls with the voltage across it: halve the distance until both agree.
  let body = bodyOhm(touch.volt, touch.percentile);
  let currentA = 0;
  for (let i = 0; i < 60; i += 1) {
    const path: Impedance = { re: body, im: -reactance };
    currentA = currentThrough(touch, path);
    body = (body + bodyOhm(currentA * body, touch.percentile)) / 2;
  }
  return { currentA, touchVolt: currentA * body, bodyOhm: body, effect: bodyEffect(currentA) };
}

export function bodyEffect(currentA: number): BodyEffect {
  if (currentA < 0.5e-3) return 'notFelt';
  if (currentA < 10e-3) return 'felt';
  return currentA < 40e-3 ? 'cannotLetGo' : 'mayKill';
}

function currentThrough({ lamp, volt }: Touch, path: Impedance): number {
  const circuit = { volt, path };
  return lampCurrent(lamp, steadyFilament(lamp, circuit), circuit);
}
