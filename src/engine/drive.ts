/** The supply of the bench. */
export interface Mains {
  readonly volt: 230 | 120;
  readonly hz: 50 | 60;
}
export type MainsId = '230V50Hz' | '120V60Hz';
export const MAINS: Readonly<Record<MainsId, Mains>> = {
  '230V50Hz': { volt: 230, hz: 50 },
  '120V60Hz': { volt: 120, hz: 60 },
};
export type Excitation = 'low' | 'high';

/** The ammeter lying across two bars. */
export interface MeterTap {
  readonly barA: number;
  readonly barB: number;
  /** Whole loop: shunt, leads and both contacts, ohm, >= 1e-4. */
  readonly loopOhm: number;
}

/** How the growler and the part stand to one another at one moment. */
export interface Drive {
  readonly mains: Mains;
  readonly excitation: Excitation;
  /** Rotation of the armature, rad. */
  readonly rotationRad: number;
  /** Temperature of the growler winding, degrees C. */
  readonly windingC: number;
  readonly meter: MeterTap | null;
  /** Temperature of each coil of the armature, degrees C, length bars, about -50..200; left out, all at 20. */
  readonly coilC?: ArrayLike<number> | undefined;
}

/** Pull on the strip: radial mean (positive towards the armature), amplitude at twice mains frequency, tangential; N. */
export interface StripForce {
  readonly meanN: number;
  readonly alternatingN: number;
  readonly tangentialN: number;
}

/** Steady sinusoidal state of growler and armature; all currents and voltages rms. */
export interface OperatingPoint {
  readonly growlerA: number;
  /** Power lost in the growler winding, W. */
  readonly growlerW: number;
  /** Peak flux in the growler core, Wb. */
  readonly fluxWb: number;
  /** Current through the ammeter tap, A; 0 when none. */
  readonly meterA: number;
  /** Current the ammeter would read between any two bars, with nothing else connected, A. */
  reading(barA: number, barB: number, loopOhm: number): number;
  /** Open-circuit potential difference of two bars, V. */
  openVolt(barA: number, barB: number): number;
  /** Loss in each coil with its riser joints, W, length bars. */
  coilLossW(): Float64Array;
  /** Current in each coil, the largest where a fault divides it, A, length bars. */
  coilCurrentA(): Float64Array;
  /** Loss in everything that is not a coil: bridges, grounds, bad risers, equalisers, W. */
  bridgeLossW(): number;
  /** @param angleDeg place of the strip from the bottom, 65..295; @param heightM clear gap strip to core, m, > 0 */
  strip(angleDeg: number, heightM: number): StripForce;
}
