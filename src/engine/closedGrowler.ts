import type { LoopSolution } from './circuit/loopSolution.ts';
import type { Drive } from './drive.ts';
import { type GrowlerDesign, mainsIdOf, windingOhm } from './growler.ts';
import type { ToothSaturation } from './magnetics/toothSaturation.ts';

/** What the growler's own winding is fed with. */
export type GrowlerSetting = Pick<Drive, 'mains' | 'excitation' | 'windingC'>;

/** A pair of bars: open-circuit volts per ampere-turn of the growler, impedance with the growler open, ohm. */
export interface PairAnswer {
  tRe: number;
  tIm: number;
  zRe: number;
  zIm: number;
}

/** Passes in which flux and magnetising current are brought to agree; each gains two digits or more. */
const PASSES = 12;

/**
 * A growler winding joined to a solved armature. Saturated teeth are a choke across the winding beside the linear
 * network: with Y = −jB its admittance, mains and winding together act on the network as a source V/(1 + RY) behind
 * R/(1 + RY). B is that of the flux with no ammeter connected, so that everything at one rotation stays one linear
 * circuit; an ammeter changes the flux by a few per cent and the choke's current by a few thousandths of the growler's.
 */
export class ClosedGrowler {
  turns = 0;
  ohm = 0;
  volt = 0;
  omega = 0;
  /** Impedance of network and source, ohm of the growler winding. */
  zRe = 0;
  zIm = 0;
  /** Current into the network with no ammeter connected, A rms. */
  idleRe = 0;
  idleIm = 0;
  /** R·B of the choke. */
  private x = 0;

  /** @param saturation null: linear iron */
  close(
    growler: GrowlerDesign,
    setting: GrowlerSetting,
    own: Pick<LoopSolution, 'ownRe' | 'ownIm'>,
    rotation: number,
    saturation: ToothSaturation | null,
  ): void {
    const winding = growler.windings[mainsIdOf(setting.mains)][setting.excitation];
    this.turns = winding.turns;
    this.ohm = windingOhm(winding, setting.windingC);
    this.volt = setting.mains.volt;
    this.omega = 2 * Math.PI * setting.mains.hz;
    this.choke(0, own);
    if (saturation) this.saturate(own, rotation, saturation);
  }

  /** Current in the winding itself for a current into the network: the choke's is added. */
  windingCurrent(re: number, im: number): { re: number; im: number } {
    const { x } = this;
    const size = 1 + x * x;
    const lag = im - (x / this.ohm) * this.volt;
    return { re: (re - x * lag) / size, im: (lag + x * re) / size };
  }

  /**
   * Current, A, through a loop of some resistance across a pair of bars: |t·i|/|z + R − t²/Z| with t and z the pair's
   * volts per ampere-turn and its impedance with the growler open.
   */
  reading(pair: PairAnswer, loopOhm: number): number {
    const { turns, zRe, zIm, idleRe, idleIm } = this;
    const tr = turns * pair.tRe;
    const ti = turns * pair.tIm;
    const t2r = tr * tr - ti * ti;
    const t2i = 2 * tr * ti;
    const z2 = zRe * zRe + zIm * zIm;
    const re = loopOhm + pair.zRe - (t2r * zRe + t2i * zIm) / z2;
    const im = pair.zIm - (t2i * zRe - t2r * zIm) / z2;
    return Math.sqrt(((tr * tr + ti * ti) * (idleRe * idleRe + idleIm * idleIm)) / (re * re + im * im));
  }

  /** Amplitude of the flux that a winding current leaves, Wb: the mains less the drop in the winding. */
  flux(current: { readonly re: number; readonly im: number }): number {
    const re = this.volt - this.ohm * current.re;
    const im = this.ohm * current.im;
    return (Math.SQRT2 * Math.sqrt(re * re + im * im)) / (this.omega * this.turns);
  }

  /** The flux falls as the choke takes more, so the answer lies between any two fluxes that miss it on either side. */
  private saturate(
    own: Pick<LoopSolution, 'ownRe' | 'ownIm'>,
    rotation: number,
    iron: ToothSaturation,
  ): void {
    let high = this.idleFlux();
    let low = 0;
    let flux = high;
    for (let pass = 0; pass < PASSES; pass++) {
      const excess = iron.ampereTurns(rotation, flux);
      this.choke((this.ohm * excess) / (flux * this.omega * this.turns ** 2), own);
      const next = this.idleFlux();
      if (Math.abs(next - flux) <= 1e-9 * flux) return;
      if (next < flux) high = flux;
      else low = flux;
      flux = next > low && next < high ? next : (low + high) / 2;
    }
  }

  private idleFlux(): number {
    return this.flux(this.windingCurrent(this.idleRe, this.idleIm));
  }

  private choke(x: number, { ownRe, ownIm }: Pick<LoopSolution, 'ownRe' | 'ownIm'>): void {
    const { turns, ohm, volt } = this;
    const size = 1 + x * x;
    this.x = x;
    this.zRe = ohm / size + turns * turns * ownRe;
    this.zIm = (ohm * x) / size + turns * turns * ownIm;
    const z2 = this.zRe * this.zRe + this.zIm * this.zIm;
    const vRe = volt / size;
    const vIm = (volt * x) / size;
    this.idleRe = (vRe * this.zRe + vIm * this.zIm) / z2;
    this.idleIm = (vIm * this.zRe - vRe * this.zIm) / z2;
  }
}
