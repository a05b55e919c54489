import type { LoopSolution } from '../../engine/circuit/loopSolution.ts';
import type { ShiftedPotentials } from '../../engine/magnetics/slotTable.ts';
import type { TipPotentials } from '../../engine/strip.ts';
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

  constructor(network: Network, solution: LoopSolution, potentials: ShiftedPotentials) {
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

  /** Potentials for any resistance across a port. */
  across(port: Port, supply: Supply): (ohm: number) => TipPotentials {
    const perAmpere = this.perAmpere(port);
    const { tRe, tIm, zRe, zIm } = this.solution;
    const n = tRe.length;
    const own = (z: Float64Array) =>
      z[port.a * n + port.a]! + z[port.b * n + port.b]! - z[port.a * n + port.b]! - z[port.b * n + port.a]!;
    const [wRe, wIm] = [own(zRe), own(zIm)];
    const t = { re: tRe[port.a]! - tRe[port.b]!, im: tIm[port.a]! - tIm[port.b]! };
    return (ohm) => {
      const re = ohm + wRe;
      const size = re * re + wIm * wIm;
      // Current fed in at the port per ampere-turn: −t / (R + W).
      const fed = { re: -(t.re * re + t.im * wIm) / size, im: -(t.im * re - t.re * wIm) / size };
      const turns = this.ampereTurns(supply, t.re * fed.re - t.im * fed.im, t.re * fed.im + t.im * fed.re);
      return mix(this.perTurn, turns, perAmpere, {
        re: fed.re * turns.re - fed.im * turns.im,
        im: fed.re * turns.im + fed.im * turns.re,
      });
    };
  }

  /** N·i of the growler: N·V/(R + N²·own), `own` changed by what the fault's current answers. */
  private ampereTurns({ turns, ohm, volt }: Supply, addRe: number, addIm: number) {
    const n2 = turns * turns;
    const re = ohm + n2 * (this.solution.ownRe + addRe);
    const im = n2 * (this.solution.ownIm + addIm);
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

/** x·a + y·b for complex factors and vectors. */
function mix(x: TipPotentials, a: Complex, y: TipPotentials, b: Complex): TipPotentials {
  const re = x.re.map((_, i) => x.re[i]! * a.re - x.im[i]! * a.im + y.re[i]! * b.re - y.im[i]! * b.im);
  const im = x.re.map((_, i) => x.re[i]! * a.im + x.im[i]! * a.re + y.re[i]! * b.im + y.im[i]! * b.re);
  return { re, im };
}
