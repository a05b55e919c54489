import { ClosedGrowler, type GrowlerSetting } from './closedGrowler.ts';
import type { MeterTap, OperatingPoint, StripForce } from './drive.ts';
import { type Driven, HeldStrip } from './heldStrip.ts';
import type { SolvedWinding } from './solvedWinding.ts';
import { lookAtStrip, newStripLinks, type StripLinks } from './stripLinks.ts';

/** Real and imaginary part. */
interface Complex {
  readonly re: number;
  readonly im: number;
}

const NOTHING: Complex = { re: 0, im: 0 };

function over(a: Complex, b: Complex): Complex {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

function times(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

function size(a: Complex): number {
  return Math.sqrt(a.re * a.re + a.im * a.im);
}

/**
 * Joins a solved winding to a growler winding and an ammeter. The growler's impedance is its resistance plus turns
 * squared times the winding's answer per turn; the ammeter sees the Thévenin source of its two bars.
 */
export class SolvedPoint implements OperatingPoint {
  readonly growlerA: number;
  readonly growlerW: number;
  readonly fluxWb: number;
  readonly meterA: number;
  private readonly w: SolvedWinding;
  private readonly closed = new ClosedGrowler();
  /** Current into the network of growler and armature, with the ammeter as it lies, and through the ammeter. */
  private readonly network: Complex;
  private readonly meter: Complex;
  private readonly tap: MeterTap | null;
  private cachedDriven: Driven | null = null;
  private cachedCurrents: { re: Float64Array; im: Float64Array } | null = null;
  private cachedStrip: HeldStrip | null = null;

  constructor(w: SolvedWinding, setting: GrowlerSetting, tap: MeterTap | null) {
    this.w = w;
    this.tap = tap;
    this.closed.close(w.growler, setting, w.solution, w.rotation, w.saturation);
    this.meter = tap ? this.through(tap.barA, tap.barB, tap.loopOhm) : NOTHING;
    this.network = this.loadedNetwork();
    const winding = this.closed.windingCurrent(this.network.re, this.network.im);
    this.growlerA = size(winding);
    this.growlerW = this.growlerA ** 2 * this.closed.ohm;
    this.fluxWb = this.closed.flux(winding);
    this.meterA = size(this.meter);
  }

  reading(barA: number, barB: number, loopOhm: number): number {
    return size(this.through(barA, barB, loopOhm));
  }

  openVolt(barA: number, barB: number): number {
    return this.joined(barA, barB) ? size(times(this.perAmpere(barA, barB), this.idle())) : 0;
  }

  coilLossW(): Float64Array {
    const loss = new Float64Array(this.w.design.bars);
    this.eachSegment((coil, i2, ohm) => {
      if (coil >= 0) loss[coil]! += i2 * ohm;
    });
    return loss;
  }

  coilCurrentA(): Float64Array {
    const amps = new Float64Array(this.w.design.bars);
    this.eachSegment((coil, i2) => {
      if (coil >= 0) amps[coil] = Math.max(amps[coil]!, Math.sqrt(i2));
    });
    return amps;
  }

  bridgeLossW(): number {
    let loss = 0;
    this.eachSegment((coil, i2, ohm) => {
      if (coil < 0) loss += i2 * ohm;
    });
    return loss;
  }

  strip(angleDeg: number, heightM: number): StripForce {
    const { design, growler } = this.w;
    const links = newStripLinks(design.slots);
    lookAtStrip(design, growler, this.frameRotation(), angleDeg, heightM, links);
    return this.stripAt(links);
  }

  /** Rotation of the core less the whole slot pitches that the potentials are shifted by, rad. */
  frameRotation(): number {
    return this.w.rotation - (this.w.potentials.shift * 2 * Math.PI) / this.w.design.slots;
  }

  /** @param links the strip as it lies over a core turned by `frameRotation` */
  stripAt(links: StripLinks): StripForce {
    this.cachedStrip ??= new HeldStrip(this.w, this.driven(), this.sourcePerTurn());
    return this.cachedStrip.pull(links);
  }

  private joined(barA: number, barB: number): boolean {
    const { island } = this.w.circuit.forest;
    return island[barA] === island[barB];
  }

  private idle(): Complex {
    return { re: this.closed.idleRe, im: this.closed.idleIm };
  }

  private impedance(): Complex {
    return { re: this.closed.zRe, im: this.closed.zIm };
  }

  /** What drives the network, seen from one turn: the whole impedance less the network's own. */
  private sourcePerTurn(): Complex {
    const { closed } = this;
    const n2 = closed.turns * closed.turns;
    const { ownRe, ownIm } = this.w.solution;
    return { re: closed.zRe / n2 - ownRe, im: closed.zIm / n2 - ownIm };
  }

  /** Volts from bar to bar per ampere into the network, nothing connected. */
  private perAmpere(barA: number, barB: number): Complex {
    const { tRe, tIm } = this.w.solution;
    const { turns } = this.closed;
    return { re: turns * (tRe[barA]! - tRe[barB]!), im: turns * (tIm[barA]! - tIm[barB]!) };
  }

  /** Current out of bar A through a loop of some resistance into bar B. */
  private through(barA: number, barB: number, loopOhm: number): Complex {
    if (barA === barB || !this.joined(barA, barB)) return NOTHING;
    const { zRe, zIm } = this.w.solution;
    const n = this.w.circuit.nodes;
    const t = this.perAmpere(barA, barB);
    const reflected = over(times(t, t), this.impedance());
    const aa = barA * n + barA;
    const bb = barB * n + barB;
    const ab = barA * n + barB;
    const z = {
      re: loopOhm + zRe[aa]! + zRe[bb]! - 2 * zRe[ab]! - reflected.re,
      im: zIm[aa]! + zIm[bb]! - 2 * zIm[ab]! - reflected.im,
    };
    return over(times(t, this.idle()), z);
  }

  /** The ammeter's current reacts on the growler: Z·i = V + t·i_m. */
  private loadedNetwork(): Complex {
    const idle = this.idle();
    if (!this.tap || (this.meter.re === 0 && this.meter.im === 0)) return idle;
    const back = over(times(this.perAmpere(this.tap.barA, this.tap.barB), this.meter), this.impedance());
    return { re: idle.re + back.re, im: idle.im + back.im };
  }

  private eachSegment(visit: (coil: number, ampsSquared: number, ohm: number) => void): void {
    this.cachedCurrents ??= { re: this.currents('re'), im: this.currents('im') };
    const { re, im } = this.cachedCurrents;
    const { topology, ohms } = this.w;
    topology.segments.forEach((s, k) => {
      visit(s.coil, re[k]! ** 2 + im[k]! ** 2, ohms[k]!);
    });
  }

  /** Ampere-turns of the growler in the network, loop currents they and the ammeter drive, and the ammeter's own. */
  private driven(): Driven {
    if (this.cachedDriven) return this.cachedDriven;
    const { circuit, solution: s } = this.w;
    const n = circuit.nodes;
    const { tap, meter, network, closed } = this;
    const re = new Float64Array(1 + circuit.loops);
    const im = new Float64Array(1 + circuit.loops);
    re[0] = closed.turns * network.re;
    im[0] = closed.turns * network.im;
    for (let k = 0; k < circuit.loops; k++) {
      const i = times({ re: s.yRe[k]!, im: s.yIm[k]! }, { re: re[0], im: im[0] });
      const a = k * n + (tap?.barA ?? 0);
      const b = k * n + (tap?.barB ?? 0);
      const fed = times({ re: s.xRe[a]! - s.xRe[b]!, im: s.xIm[a]! - s.xIm[b]! }, meter);
      re[1 + k] = i.re + fed.re;
      im[1 + k] = i.im + fed.im;
    }
    const lies = tap && tap.barA !== tap.barB;
    this.cachedDriven = { re, im, meter: lies ? { ...meter, barA: tap.barA, barB: tap.barB } : null };
    return this.cachedDriven;
  }

  /** Branch currents: loop currents and the ammeter's path through the tree. */
  private currents(part: 're' | 'im'): Float64Array {
    const driven = this.driven();
    const fed = new Float64Array(this.w.circuit.nodes);
    if (driven.meter) {
      fed[driven.meter.barA]! -= driven.meter[part];
      fed[driven.meter.barB]! += driven.meter[part];
    }
    return this.w.circuit.branchCurrents(driven[part].subarray(1), fed);
  }
}
