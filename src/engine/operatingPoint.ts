import { type Column, newTurnAndPair, type PairProbe } from './circuit/pairProbe.ts';
import { ClosedGrowler, type GrowlerSetting, type PairAnswer } from './closedGrowler.ts';
import type { MeterTap, OperatingPoint, StripForce } from './drive.ts';
import { endLeakageHenry } from './growler.ts';
import { type Driven, HeldStrip, type LoopImpedances } from './heldStrip.ts';
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

/** What the probe found of the loops at this rotation, kept since others turn it too. */
interface Loops {
  readonly ownRe: number;
  readonly ownIm: number;
  readonly perTurn: Column;
}

function loopsOf({ ownRe, ownIm, perTurn }: PairProbe): Loops {
  return { ownRe, ownIm, perTurn: copyOf(perTurn) };
}

function impedancesOf({ loopRe, loopIm, loopTurn, turnOhm }: PairProbe): LoopImpedances {
  return { loopRe: loopRe.slice(), loopIm: loopIm.slice(), loopTurn: loopTurn.slice(), turnOhm };
}

function copyOf({ re, im }: Column): Column {
  return { re: re.slice(), im: im.slice() };
}

/** Two pieces of metal, what lies between them, and the loop currents an ampere out of one into the other drives. */
interface Pair {
  readonly answer: PairAnswer;
  readonly perAmpere: Column;
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
  private readonly loops: Loops;
  /** Current into the network of growler and armature, with the ammeter as it lies, and through the ammeter. */
  private readonly network: Complex;
  private readonly meter: Complex;
  private readonly tap: MeterTap | null;
  /** What the ammeter lies across; null where it lies nowhere or nothing joins its two ends. */
  private readonly tapped: Pair | null;
  private cachedDriven: Driven | null = null;
  private cachedCurrents: { re: Float64Array; im: Float64Array } | null = null;
  private cachedStrip: HeldStrip | null = null;

  constructor(w: SolvedWinding, setting: GrowlerSetting, tap: MeterTap | null) {
    this.w = w;
    this.tap = tap;
    this.turnProbe();
    this.loops = loopsOf(w.probe);
    this.closed.close(w.growler, setting, this.loops, w.rotation, w.saturation);
    this.tapped = tap ? this.ask(tap.barA, tap.barB) : null;
    this.meter = tap && this.tapped ? this.through(this.tapped.answer, tap.loopOhm) : NOTHING;
    this.network = this.loadedNetwork();
    const winding = this.closed.windingCurrent(this.network.re, this.network.im);
    this.growlerA = size(winding);
    this.growlerW = this.growlerA ** 2 * this.closed.ohm;
    this.fluxWb = this.closed.flux(winding);
    this.meterA = size(this.meter);
  }

  reading(barA: number, barB: number, loopOhm: number): number {
    const pair = this.look(barA, barB);
    return pair ? size(this.through(pair.answer, loopOhm)) : 0;
  }

  openVolt(barA: number, barB: number): number {
    const pair = this.look(barA, barB);
    return pair ? size(times(this.perAmpere(pair.answer), this.idle())) : 0;
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
    return this.w.rotation - (this.w.place.shift * 2 * Math.PI) / this.w.design.slots;
  }

  /** @param links the strip as it lies over a core turned by `frameRotation` */
  stripAt(links: StripLinks): StripForce {
    this.cachedStrip ??= this.holdStrip();
    return this.cachedStrip.pull(links);
  }

  private holdStrip(): HeldStrip {
    this.turnProbe();
    return new HeldStrip(this.w, this.driven(), this.sourcePerTurn(), impedancesOf(this.w.probe));
  }

  private turnProbe(): void {
    const { probe, ohms, place, growler, omega } = this.w;
    probe.setOhms(ohms);
    probe.turnTo(place, endLeakageHenry(growler), omega);
  }

  /** Two pieces of metal at any later time, when the probe may have been turned elsewhere. */
  private look(barA: number, barB: number): Pair | null {
    this.turnProbe();
    return this.ask(barA, barB);
  }

  private ask(barA: number, barB: number): Pair | null {
    const { probe } = this.w;
    if (barA === barB || !probe.joined(barA, barB)) return null;
    const answer = newTurnAndPair();
    probe.ask(barA, barB, answer);
    return { answer, perAmpere: copyOf(probe.perAmpere) };
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
    const { ownRe, ownIm } = this.loops;
    return { re: closed.zRe / n2 - ownRe, im: closed.zIm / n2 - ownIm };
  }

  /** Volts from bar to bar per ampere into the network, nothing connected. */
  private perAmpere({ tRe, tIm }: PairAnswer): Complex {
    const { turns } = this.closed;
    return { re: turns * tRe, im: turns * tIm };
  }

  /** Current out of one bar through a loop of some resistance into the other. */
  private through(pair: PairAnswer, loopOhm: number): Complex {
    const t = this.perAmpere(pair);
    const reflected = over(times(t, t), this.impedance());
    const z = { re: loopOhm + pair.zRe - reflected.re, im: pair.zIm - reflected.im };
    return over(times(t, this.idle()), z);
  }

  /** The ammeter's current reacts on the growler: Z·i = V + t·i_m. */
  private loadedNetwork(): Complex {
    const idle = this.idle();
    if (!this.tapped) return idle;
    const back = over(times(this.perAmpere(this.tapped.answer), this.meter), this.impedance());
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
    const { tap, tapped, meter, network, closed, loops } = this;
    const { loops: count } = this.w.circuit;
    const re = new Float64Array(1 + count);
    const im = new Float64Array(1 + count);
    re[0] = closed.turns * network.re;
    im[0] = closed.turns * network.im;
    addDriven(loops.perTurn, { re: re[0], im: im[0] }, re, im);
    if (tapped) addDriven(tapped.perAmpere, meter, re, im);
    const lies = tap && tapped ? { ...meter, barA: tap.barA, barB: tap.barB } : null;
    this.cachedDriven = { re, im, meter: lies };
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

/** Adds to the loops, from place 1 on, the currents that a driving one calls up. */
function addDriven(per: Column, by: Complex, re: Float64Array, im: Float64Array): void {
  for (let k = 0; k < per.re.length; k++) {
    const i = times({ re: per.re[k]!, im: per.im[k]! }, by);
    re[1 + k]! += i.re;
    im[1 + k]! += i.im;
  }
}
