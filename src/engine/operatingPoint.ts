import type { LoopCircuit, LoopSolution } from './circuit/loopSolution.ts';
import type { Topology } from './circuit/topology.ts';
import type { Drive, OperatingPoint, StripForce } from './drive.ts';
import { type GrowlerDesign, mainsIdOf, windingOhm } from './growler.ts';
import type { ShiftedPotentials } from './magnetics/slotTable.ts';
import type { ArmatureDesign } from './parts/armature.ts';
import { stripForce, type TipPotentials } from './strip.ts';

/** Everything about a winding at one rotation and one frequency that does not depend on the growler's winding. */
export interface SolvedWinding {
  readonly design: ArmatureDesign;
  readonly growler: GrowlerDesign;
  readonly depth: number;
  readonly topology: Topology;
  readonly circuit: LoopCircuit;
  readonly solution: LoopSolution;
  readonly potentials: ShiftedPotentials;
}

/** Real and imaginary part. */
interface Complex {
  readonly re: number;
  readonly im: number;
}

function over(a: Complex, b: Complex): Complex {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

function times(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

/**
 * Joins a solved winding to a growler winding and an ammeter. The growler's impedance is its resistance plus turns
 * squared times the winding's answer per turn; the ammeter sees the Thévenin source of its two bars.
 */
export function operatingPoint(w: SolvedWinding, drive: Drive): OperatingPoint {
  return new SolvedPoint(w, drive);
}

class SolvedPoint implements OperatingPoint {
  readonly growlerA: number;
  readonly growlerW: number;
  readonly fluxWb: number;
  readonly meterA: number;
  private readonly w: SolvedWinding;
  private readonly rotation: number;
  private readonly turns: number;
  private readonly impedance: Complex;
  /** Growler current with no ammeter connected, and as it is. */
  private readonly idle: Complex;
  private readonly primary: Complex;
  private readonly meter: Complex;
  private readonly tap: Drive['meter'];
  private cachedCurrents: { re: Float64Array; im: Float64Array } | null = null;
  private cachedTips: TipPotentials | null = null;

  constructor(w: SolvedWinding, drive: Drive) {
    const winding = w.growler.windings[mainsIdOf(drive.mains)][drive.excitation];
    const ohm = windingOhm(winding, drive.windingC);
    const { volt, hz } = drive.mains;
    this.w = w;
    this.rotation = drive.rotationRad;
    this.turns = winding.turns;
    this.tap = drive.meter;
    const n2 = this.turns * this.turns;
    this.impedance = { re: ohm + n2 * w.solution.ownRe, im: n2 * w.solution.ownIm };
    this.idle = over({ re: volt, im: 0 }, this.impedance);
    this.meter = this.tap ? this.through(this.tap.barA, this.tap.barB, this.tap.loopOhm) : { re: 0, im: 0 };
    this.primary = this.loadedPrimary();
    this.growlerA = Math.hypot(this.primary.re, this.primary.im);
    this.growlerW = this.growlerA ** 2 * ohm;
    const inducedV = Math.hypot(volt - ohm * this.primary.re, ohm * this.primary.im);
    this.fluxWb = (Math.SQRT2 * inducedV) / (2 * Math.PI * hz * this.turns);
    this.meterA = Math.hypot(this.meter.re, this.meter.im);
  }

  reading(barA: number, barB: number, loopOhm: number): number {
    const i = this.through(barA, barB, loopOhm);
    return Math.hypot(i.re, i.im);
  }

  openVolt(barA: number, barB: number): number {
    if (!this.joined(barA, barB)) return 0;
    const v = times(this.perAmpere(barA, barB), this.idle);
    return Math.hypot(v.re, v.im);
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
    const { design, growler, depth, potentials } = this.w;
    const pitch = (2 * Math.PI) / design.slots;
    this.cachedTips ??= this.tipPotentials();
    return stripForce(
      design,
      growler,
      depth,
      this.cachedTips,
      this.rotation - potentials.shift * pitch,
      angleDeg,
      heightM,
    );
  }

  private joined(barA: number, barB: number): boolean {
    const { island } = this.w.circuit.forest;
    return island[barA] === island[barB];
  }

  /** Volts from bar to bar per growler ampere, nothing connected. */
  private perAmpere(barA: number, barB: number): Complex {
    const { tRe, tIm } = this.w.solution;
    return { re: this.turns * (tRe[barA]! - tRe[barB]!), im: this.turns * (tIm[barA]! - tIm[barB]!) };
  }

  /** Current out of bar A through a loop of some resistance into bar B. */
  private through(barA: number, barB: number, loopOhm: number): Complex {
    if (barA === barB || !this.joined(barA, barB)) return { re: 0, im: 0 };
    const { zRe, zIm } = this.w.solution;
    const n = this.w.circuit.nodes;
    const t = this.perAmpere(barA, barB);
    const reflected = over(times(t, t), this.impedance);
    const aa = barA * n + barA;
    const bb = barB * n + barB;
    const ab = barA * n + barB;
    const z = {
      re: loopOhm + zRe[aa]! + zRe[bb]! - 2 * zRe[ab]! - reflected.re,
      im: zIm[aa]! + zIm[bb]! - 2 * zIm[ab]! - reflected.im,
    };
    return over(times(t, this.idle), z);
  }

  /** The ammeter's current reacts on the growler: Z·i_p = V + t·i_m. */
  private loadedPrimary(): Complex {
    if (!this.tap || (this.meter.re === 0 && this.meter.im === 0)) return this.idle;
    const back = over(times(this.perAmpere(this.tap.barA, this.tap.barB), this.meter), this.impedance);
    return { re: this.idle.re + back.re, im: this.idle.im + back.im };
  }

  private eachSegment(visit: (coil: number, ampsSquared: number, ohm: number) => void): void {
    const { re, im } = this.currents();
    this.w.topology.segments.forEach((s, k) => {
      visit(s.coil, re[k]! ** 2 + im[k]! ** 2, s.ohm);
    });
  }

  private currents(): { re: Float64Array; im: Float64Array } {
    this.cachedCurrents ??= { re: this.currentPart('re'), im: this.currentPart('im') };
    return this.cachedCurrents;
  }

  /** Branch currents: loop currents of the growler's ampere-turns and of the ammeter, and the ammeter's own path. */
  private currentPart(part: 're' | 'im'): Float64Array {
    const { circuit, solution: s } = this.w;
    const n = circuit.nodes;
    const fed = new Float64Array(n);
    const loop = new Float64Array(circuit.loops);
    const drive = { re: this.turns * this.primary.re, im: this.turns * this.primary.im };
    for (let k = 0; k < circuit.loops; k++) {
      let i = times({ re: s.yRe[k]!, im: s.yIm[k]! }, drive);
      if (this.tap) {
        const a = k * n + this.tap.barA;
        const b = k * n + this.tap.barB;
        const fedIn = times({ re: s.xRe[a]! - s.xRe[b]!, im: s.xIm[a]! - s.xIm[b]! }, this.meter);
        i = { re: i.re + fedIn.re, im: i.im + fedIn.im };
      }
      loop[k] = i[part];
    }
    if (this.tap && this.tap.barA !== this.tap.barB) {
      fed[this.tap.barA]! -= this.meter[part];
      fed[this.tap.barB]! += this.meter[part];
    }
    return circuit.branchCurrents(loop, fed);
  }

  /** Tooth and jaw potentials from the ampere-turns of the growler and of every slot. */
  private tipPotentials(): TipPotentials {
    const { re, im } = this.currents();
    return { re: this.tipPart(re, this.primary.re), im: this.tipPart(im, this.primary.im) };
  }

  private tipPart(currents: Float64Array, primary: number): Float64Array {
    const { design, potentials, topology } = this.w;
    const s = design.slots;
    const source = new Float64Array(s + 1);
    source[0] = this.turns * primary;
    for (let k = 0; k < topology.windingSegments; k++) {
      const segment = topology.segments[k]!;
      source[1 + ((segment.topSlot + potentials.shift) % s)]! += segment.top * currents[k]!;
      source[1 + ((segment.bottomSlot + potentials.shift) % s)]! += segment.bottom * currents[k]!;
    }
    const u = new Float64Array(s + 2);
    for (let t = 0; t < s + 2; t++) {
      let sum = 0;
      for (let c = 0; c <= s; c++) sum += potentials.tips[t * (s + 1) + c]! * source[c]!;
      u[t] = sum;
    }
    return u;
  }
}
