/**
 * The insulation tester: a steady test voltage behind a current limit, and a reading in megohms. Growler off, part out
 * of the cradle, no other lead on it; discharge the part afterwards.
 */

export const TEST_VOLTS = [250, 500] as const;
export type TestVolt = (typeof TEST_VOLTS)[number];
/** The voltage to start with unless the job card says otherwise, and the least acceptable reading (references A07). */
export const DEFAULT_TEST_VOLT: TestVolt = 250;
export const LEAST_OHM = 1e6;

/**
 * Open terminals carry a tenth more than the marked voltage, and the marked voltage still stands at 1000 ohm per volt,
 * where the current is 1 mA: which sets the inner resistance at 100 ohm per volt, 11 mA into a short. Limits of such
 * testers from memory: not less than 1 mA, not more than 15 mA (IEC 61557-2).
 */
const OPEN_FACTOR = 1.1;
const INNER_OHM_PER_VOLT = 100;
/** Lag of the display, s: an estimate. */
const LAG_S = 0.4;
/** Resistance at the middle of the tester's scale, ohm, and the largest it shows. */
const MIDDLE_OHM = 10e6;
const MOST_OHM = 999e6;

/** What hangs on the tester. */
export interface Specimen {
  /** Leakage resistance at the test voltage and temperature, ohm; null: none at all. */
  readonly ohm: number | null;
  /** Capacitance of winding to core, F. */
  readonly farad: number;
}

/** Capacitance of the winding of a small machine to its core, F: an estimate for the invented parts. */
export const WINDING_CAPACITANCE = 5e-9;

/** Voltage at the terminals once the part is charged, V: this is what may break weak insulation down. */
export function terminalVolt(volt: TestVolt, ohm: number | null): number {
  const open = OPEN_FACTOR * volt;
  return ohm === null ? open : (open * ohm) / (ohm + INNER_OHM_PER_VOLT * volt);
}

/** Current into a dead short, A. */
export function shortCurrent(volt: TestVolt): number {
  return (OPEN_FACTOR * volt) / (INNER_OHM_PER_VOLT * volt);
}

/**
 * Resistance on the display `sinceMs` after the button went down, ohm. The part's capacitance charges through the inner
 * resistance, then the display follows: two lags one after the other, acting on the deflection of a scale that runs from
 * zero to infinity,  d = R / (R + R_middle). The slow absorption of damp insulation is not modelled.
 */
export function displayedOhm(specimen: Specimen, volt: TestVolt, sinceMs: number): number {
  const settled = specimen.ohm === null ? 1 : specimen.ohm / (specimen.ohm + MIDDLE_OHM);
  const d = settled * risen(sinceMs / 1000, chargingTime(specimen, volt));
  return (MIDDLE_OHM * d) / (1 - d);
}

/** What an eye reads: megohms in three figures, or over range. */
export function seeMegohms(ohm: number): { readonly megohms: number; readonly over: boolean } {
  if (ohm > MOST_OHM) return { megohms: MOST_OHM / 1e6, over: true };
  const megohms = ohm / 1e6;
  const places = megohms < 10 ? 2 : megohms < 100 ? 1 : 0;
  return { megohms: Number(megohms.toFixed(places)), over: false };
}

/** Whether the display no longer changes to the eye. */
export function testerAtRest(specimen: Specimen, volt: TestVolt, sinceMs: number): boolean {
  const now = seeMegohms(displayedOhm(specimen, volt, sinceMs));
  const end = seeMegohms(specimen.ohm ?? Number.POSITIVE_INFINITY);
  return now.over === end.over && now.megohms === end.megohms;
}

/**
 * Voltage left on the part after the leads came off charged, V: it empties through its own leakage only, or at once
 * when someone discharges it.
 * @param sinceMs time since the leads came off
 */
export function leftVolt(specimen: Specimen, chargedVolt: number, sinceMs: number): number {
  if (specimen.ohm === null) return chargedVolt;
  return chargedVolt * Math.exp(-sinceMs / 1000 / (specimen.ohm * specimen.farad));
}

/**
 * A reading carried to 40 C, ohm: R40 = R 0.5^((40 - T)/10). Shown beside the reading, never in its place.
 * @source references A18: thermoplastic and quick correction, stored article on IEEE 43-2013
 */
export function correctedTo40(ohm: number, tempC: number): number {
  return ohm * 0.5 ** ((40 - tempC) / 10);
}

function chargingTime({ ohm, farad }: Specimen, volt: TestVolt): number {
  const inner = INNER_OHM_PER_VOLT * volt;
  return farad * (ohm === null ? inner : (ohm * inner) / (ohm + inner));
}

/** Share of a step that has come through the charging and the display, 0..1. */
function risen(t: number, charging: number): number {
  const apart = LAG_S - charging;
  // Equal lags: the limit of the general form.
  if (Math.abs(apart) < 1e-9) return 1 - (1 + t / LAG_S) * Math.exp(-t / LAG_S);
  return 1 - (LAG_S * Math.exp(-t / LAG_S) - charging * Math.exp(-t / charging)) / apart;
}
