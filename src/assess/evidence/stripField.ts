import type { LoopSolution } from '../../engine/circuit/loopSolution.ts';
import type { ShiftedPotentials } from '../../engine/magnetics/slotTable.ts';
import { STRIP, stripFlux, stripTesla, type TipPotentials } from '../../engine/strip.ts';
import type { StripLinks } from '../../engine/stripLinks.ts';
import type { Port } from './joints.ts';
import type { Network } from './network.ts';
import type { Supply } from './thevenin.ts';

/**
 * Magnetic potentials of teeth and jaws with one resistance across one port of a winding and no ammeter connected:
 * so much from the growler's ampere-turns, so much from the current in the fault.
 */
export class StripField {
  private readonly network: Network;
  private readonly solution: LoopSolution;
  private readonly potentials: ShiftedPotentials;
  private readonly slots: number;
  /** Tooth and jaw potentials per ampere-turn of the growler with the winding whole. */
  private readonly perTurn: TipPotentials;

  private readonly omega: number;

  constructor(network: Network, solution: LoopSolution, potentials: ShiftedPotentials, hz: number) {
    this.omega = 2 * Math.PI * hz;
    this.network = network;
    this.solution = solution;
    this.potentials = potentials;
    this.slots = potentials.slots;
    const n = network.topology.nodes;
    const { yRe, yIm } = solution;
    this.perTurn = {
      re: this.tips(yRe, new Float64Array(n), 1),
      im: this.tips(yIm, new Float64Array(n), 0),
    };
  }

  /** Nothing across any port. */
  whole(supply: Supply): TipPotentials {
    const turns = this.ampereTurns(supply, 0, 0);
    return mix(this.perTurn, turns, this.perTurn, { re: 0, im: 0 });
  }

  /**
   * Potentials for any resistance across a port, the strip over it raising the impedance of the fault's current:
   * by jω·depth·Σp(v − v_strip)², less as its steel saturates.
   */
  across(port: Port, supply: Supply, strip: StripLinks, depth: number): (ohm: number) => TipPotentials {
    const perAmpere = this.perAmpere(port);
    const loading = this.loading(perAmpere, strip, depth);
    const at = this.portOf(port);
    const solve = (ohm: number, soft: number) => {
      const w = { re: at.w.re + soft * loading.own.re, im: at.w.im + soft * loading.own.im };
      const t = { re: at.t.re + soft * loading.turn.re, im: at.t.im + soft * loading.turn.im };
      const re = ohm + w.re;
      const size = re * re + w.im * w.im;
      // Current fed in at the port per ampere-turn: −t / (R + W).
      const fed = { re: -(t.re * re + t.im * w.im) / size, im: -(t.im * re - t.re * w.im) / size };
      const answer = product(t, fed);
      const turns = this.ampereTurns(supply, answer.re, answer.im);
      return mix(this.perTurn, turns, perAmpere, product(fed, turns));
    };
    return (ohm) => {
      const b = stripTesla(stripFlux(strip, solve(ohm, 0))) / STRIP.saturationT;
      return solve(ohm, 1 / Math.sqrt(1 + b * b));
    };
  }

  /** Impedance of a port, and its volts per ampere-turn of the growler. */
  private portOf({ a, b }: Port): { readonly w: Complex; readonly t: Complex } {
    const { tRe, tIm, zRe, zIm } = this.solution;
    const n = tRe.length;
    const own = (z: Float64Array) => z[a * n + a]! + z[b * n + b]! - z[a * n + b]! - z[b * n + a]!;
    return { w: { re: own(zRe), im: own(zIm) }, t: { re: tRe[a]! - tRe[b]!, im: tIm[a]! - tIm[b]! } };
  }

  /** What an unsaturated strip adds to the port's impedance and to its coupling with the growler's turn, ohm. */
  private loading(perAmpere: TipPotentials, strip: StripLinks, depth: number) {
    const own = above(perAmpere, strip);
    const turn = above(this.perTurn, strip);
    return {
      own: weighed(own, own, strip, this.omega * depth),
      turn: weighed(own, turn, strip, this.omega * depth),
    };
  }

  /** N·i of the growler: N·V/(R + N²·own), `own` changed by what the fault's current answers. */
  private ampereTurns({ turns, ohmRe, ohmIm, volt }: Supply, addRe: number, addIm: number): Complex {
    const n2 = turns * turns;
    const re = ohmRe + n2 * (this.solution.ownRe + addRe);
    const im = ohmIm + n2 * (this.solution.ownIm + addIm);
    const share = (turns * volt) / (re * re + im * im);
    return { re: re * share, im: -im * share };
  }

  /** One ampere fed in at one side of the port and out at the other. */
  private perAmpere({ a, b }: Port): TipPotentials {
    const { xRe, xIm, tRe } = this.solution;
    const n = tRe.length;
    const loops = xRe.length / n;
    const part = (x: Float64Array, real: boolean) => {
      const loop = Float64Array.from({ length: loops }, (_, k) => x[k * n + b]! - x[k * n + a]!);
      const fed = new Float64Array(n);
      if (real) {
        fed[a]! += 1;
        fed[b]! -= 1;
      }
      return this.tips(loop, fed, 0);
    };
    return { re: part(xRe, true), im: part(xIm, false) };
  }

  private tips(loop: Float64Array, fed: Float64Array, growlerTurns: number): Float64Array {
    const { topology, circuit } = this.network;
    const currents = circuit.branchCurrents(loop, fed);
    const { slots: s, potentials } = this;
    const source = new Float64Array(s + 1);
    source[0] = growlerTurns;
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

interface Complex {
  readonly re: number;
  readonly im: number;
}

function product(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

/** Potentials of the places a strip touches less the strip's own. */
function above(u: TipPotentials, { count, places, p }: StripLinks): Complex[] {
  let sum = 0;
  let re = 0;
  let im = 0;
  for (let k = 0; k < count; k++) {
    sum += p[k]!;
    re += p[k]! * u.re[places[k]!]!;
    im += p[k]! * u.im[places[k]!]!;
  }
  return Array.from({ length: count }, (_, k) => ({
    re: u.re[places[k]!]! - re / sum,
    im: u.im[places[k]!]! - im / sum,
  }));
}

/** j·factor·Σ p·x·y */
function weighed(x: readonly Complex[], y: readonly Complex[], { p }: StripLinks, factor: number): Complex {
  let re = 0;
  let im = 0;
  x.forEach((one, k) => {
    const both = product(one, y[k]!);
    re += p[k]! * both.re;
    im += p[k]! * both.im;
  });
  return { re: -factor * im, im: factor * re };
}

/** x·a + y·b for complex factors and vectors. */
function mix(x: TipPotentials, a: Complex, y: TipPotentials, b: Complex): TipPotentials {
  const re = x.re.map((_, i) => x.re[i]! * a.re - x.im[i]! * a.im + y.re[i]! * b.re - y.im[i]! * b.im);
  const im = x.re.map((_, i) => x.re[i]! * a.im + x.im[i]! * a.re + y.re[i]! * b.im + y.im[i]! * b.re);
  return { re, im };
}
