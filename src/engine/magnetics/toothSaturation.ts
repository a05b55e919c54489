import type { GrowlerDesign } from '../growler.ts';
import { endLeakageHenry, sharedDepth } from '../growler.ts';
import { MU0 } from '../math/constants.ts';
import { factorLu, solveLu } from '../math/realLu.ts';
import type { ArmatureDesign } from '../parts/armature.ts';
import { fieldStrength, fluxSlope, ironCurve } from './ironCurve.ts';
import type { SlotTable } from './slotTable.ts';
import { rootRadius, TOOTH_BODY, toothWidth } from './toothNetwork.ts';

/** Angles in one slot pitch, and steps of flux, at which the teeth are solved; read between by straight lines. */
const ANGLES = 16;
const LEVELS = 32;
/** Largest flux solved, Wb; beyond it the last slope goes on. */
const MOST_FLUX = 0.8e-3;
/** Teeth that carry less than this share of the growler's flux stay linear. */
const IDLE_TOOTH = 0.02;
/** Places along a tooth. */
const PLACES = 6;
/** Points of a quarter cycle at which the magnetising current is weighed for its first harmonic. */
const PHASES = 16;

/**
 * Ampere-turns the growler needs beyond those of linear iron because the few teeth under the jaws saturate at their
 * roots. The teeth's own magnetomotive force F_t(φ_t) is put into the linear network, whose branch fluxes Λ are
 * second differences of the slot potentials: φ_t = λ_t·N·i − Σ Λ_tu·F_u(φ_u), solved for the flux the mains demand.
 * Only the first harmonic of the magnetising current counts; the fluxes are those of an armature whose coils carry
 * nothing, and what the coils link is left linear.
 * Range: to 0.75 mWb in the growler (the bench reaches 0.52). Against finite elements the growler's inductance agrees
 * within 0.5 % to 0.44 mWb and 3.5 % at 0.6 mWb (6.5 % at 0.7, where those had not settled). Left out: flux moves from
 * saturated teeth to their neighbours, so that what a coil links changes by up to 1 % of the largest at 0.44 mWb and,
 * with a side under the end of a jaw, by up to 8 % at 0.6.
 * @source reluctance network of saturable teeth; magnetisation curve see ironCurve; nothing fitted
 */
export class ToothSaturation {
  private readonly a: ArmatureDesign;
  private readonly depth: number;
  private readonly endLeakage: number;
  private readonly table: SlotTable;
  private readonly solved = new Array<MagnetisingCurve | undefined>(ANGLES);

  constructor(a: ArmatureDesign, g: GrowlerDesign, table: SlotTable) {
    this.a = a;
    this.depth = sharedDepth(g, a.stackLength);
    this.endLeakage = endLeakageHenry(g);
    this.table = table;
  }

  /**
   * Extra ampere-turns, amplitude of the first harmonic.
   * @param rotation rad, any value  @param fluxWb amplitude of the flux in the growler winding, Wb, >= 0
   */
  ampereTurns(rotation: number, fluxWb: number): number {
    const turns = rotation / (2 * Math.PI);
    const pitches = (turns - Math.floor(turns)) * this.a.slots;
    const x = (pitches - Math.floor(pitches)) * ANGLES;
    const step = Math.min(ANGLES - 1, Math.floor(x));
    const before = this.read(step, fluxWb);
    const after = this.read((step + 1) % ANGLES, fluxWb);
    return before + (x - step) * (after - before);
  }

  private read(step: number, fluxWb: number): number {
    this.solved[step] ??= this.solve(step);
    const { excess, share } = this.solved[step];
    return readExcess(excess, share * fluxWb);
  }

  private solve(step: number): MagnetisingCurve {
    const { m } = this.table.at((2 * Math.PI * step) / (ANGLES * this.a.slots));
    const own = this.depth * m[0]!;
    const excess = firstHarmonic(staticExcess(this.a, this.depth, m));
    return { excess, share: own / (own + this.endLeakage) };
  }
}

/** Extra ampere-turns by flux in the network, and the network's share of the flux in the growler winding. */
interface MagnetisingCurve {
  readonly excess: Float64Array;
  readonly share: number;
}

/**
 * Extra ampere-turns at a steady flux, at LEVELS + 1 fluxes from zero to MOST_FLUX.
 * @param depth of the field, m  @param m slot potentials at the rotation in question, (S+1)²
 */
export function staticExcess(a: ArmatureDesign, depth: number, m: Float64Array): Float64Array {
  return new SaturableTeeth(a.slots, m, new ToothBody(a)).levels(depth);
}

/** What such a list says of a flux between its levels. @param fluxWb >= 0 */
export function readExcess(levels: Float64Array, fluxWb: number): number {
  const x = (fluxWb / MOST_FLUX) * LEVELS;
  const k = Math.min(LEVELS - 1, Math.floor(x));
  return levels[k]! + (x - k) * (levels[k + 1]! - levels[k]!);
}

/** (2/π)·∫ F(φ·sin τ)·sin τ dτ over half a cycle, for every level. */
function firstHarmonic(peak: Float64Array): Float64Array {
  return peak.map((_, k) => {
    let sum = 0;
    for (let p = 0; p < PHASES; p++) {
      const sin = Math.sin(((p + 0.5) * Math.PI) / (2 * PHASES));
      sum += readExcess(peak, ((k * MOST_FLUX) / LEVELS) * sin) * sin;
    }
    return (2 * sum) / PHASES;
  });
}

/** One tooth between its slots: iron that narrows to the root, air of the slot beside it. */
class ToothBody {
  private readonly curve: ReturnType<typeof ironCurve>;
  private readonly widths: Float64Array;
  private readonly air: number;
  private readonly length: number;

  constructor(a: ArmatureDesign) {
    const root = rootRadius(a);
    const height = a.outerRadius - a.lipHeight - a.wedgeHeight - root;
    this.curve = ironCurve(a.relativePermeability);
    this.widths = Float64Array.from({ length: PLACES }, (_, k) =>
      toothWidth(a, root + ((k + 0.5) * height) / PLACES),
    );
    this.air = a.slotWidth;
    this.length = (TOOTH_BODY * height) / PLACES;
  }

  /** Magnetomotive force beyond that of linear iron, A, and its change with the flux, A·m/Wb. @param flux Wb/m */
  drop(flux: number, into: { force: number; slope: number }): void {
    into.force = 0;
    into.slope = 0;
    const size = Math.abs(flux);
    for (const width of this.widths) {
      const linear = 1 / (MU0 * this.curve.relativePermeability * width);
      const h = fieldStrength(this.curve, size, width, this.air);
      into.force += (h - size * linear) * this.length;
      into.slope += (1 / fluxSlope(this.curve, h, width, this.air) - linear) * this.length;
    }
    if (flux < 0) into.force = -into.force;
  }
}

/** The teeth that carry flux at one rotation, solved for a rising flux in the growler. */
class SaturableTeeth {
  private readonly body: ToothBody;
  /** Growler's own permeance, its flux in each tooth per ampere-turn, and the teeth's on one another, H/m. */
  private readonly own: number;
  private readonly share: Float64Array;
  private readonly mutual: Float64Array;
  private readonly flux: Float64Array;
  private readonly force: Float64Array;
  private readonly slope: Float64Array;

  constructor(slots: number, m: Float64Array, body: ToothBody) {
    const w = slots + 1;
    const at = (i: number, j: number) => m[(1 + (i % slots)) * w + 1 + (j % slots)]!;
    const perTurn = Float64Array.from(
      { length: slots },
      (_, t) => m[(1 + t) * w]! - m[(1 + ((t + 1) % slots)) * w]!,
    );
    const own = m[0]!;
    const busy = Array.from(perTurn.keys()).filter((t) => Math.abs(perTurn[t]!) > IDLE_TOOTH * own);
    this.body = body;
    this.own = own;
    this.share = Float64Array.from(busy, (t) => perTurn[t]!);
    this.mutual = Float64Array.from(
      busy.flatMap((t) => busy.map((u) => at(t, u) - at(t, u + 1) - at(t + 1, u) + at(t + 1, u + 1))),
    );
    this.flux = new Float64Array(busy.length);
    this.force = new Float64Array(busy.length);
    this.slope = new Float64Array(busy.length);
  }

  /** Extra ampere-turns at LEVELS + 1 fluxes from zero up, each solved from the one before. */
  levels(depth: number): Float64Array {
    const out = new Float64Array(LEVELS + 1);
    const per = MOST_FLUX / LEVELS / depth;
    for (let k = 1; k <= LEVELS; k++) {
      for (let t = 0; t < this.share.length; t++) this.flux[t]! += (this.share[t]! * per) / this.own;
      out[k] = Math.max(out[k - 1]!, this.settle(k * per));
    }
    return out;
  }

  /** Newton's steps, shortened until they bring the residual down. @param flux in the growler, Wb/m */
  private settle(flux: number): number {
    let size = this.residual(flux);
    for (let pass = 0; pass < 40 && size > 1e-9 * flux; pass++) {
      const step = this.newtonStep(flux);
      const start = this.flux.slice();
      for (let share = 1; share > 1e-3; share /= 2) {
        for (let t = 0; t < start.length; t++) this.flux[t] = start[t]! - share * step[t]!;
        const next = this.residual(flux);
        if (next < size || share < 2e-3) {
          size = next;
          break;
        }
      }
    }
    return this.extra();
  }

  /** Σ λ_t·F_t over the growler's own permeance: what the teeth ask of the growler for the same flux, A. */
  private extra(): number {
    let sum = 0;
    for (let t = 0; t < this.share.length; t++) sum += this.share[t]! * this.force[t]!;
    return sum / this.own;
  }

  /** Fills force and slope; largest difference of the tooth fluxes from what the network gives for their forces. */
  private residual(flux: number): number {
    for (let t = 0; t < this.flux.length; t++) {
      this.body.drop(this.flux[t]!, drop);
      this.force[t] = drop.force;
      this.slope[t] = drop.slope;
    }
    return this.differences(flux).reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  }

  private differences(flux: number): Float64Array {
    const n = this.flux.length;
    const turns = flux / this.own + this.extra();
    return this.flux.map((x, t) => {
      let answer = this.share[t]! * turns;
      for (let u = 0; u < n; u++) answer -= this.mutual[t * n + u]! * this.force[u]!;
      return x - answer;
    });
  }

  private newtonStep(flux: number): Float64Array {
    const n = this.flux.length;
    const jacobian = new Float64Array(n * n);
    for (let t = 0; t < n; t++) {
      for (let u = 0; u < n; u++) {
        const answer = this.mutual[t * n + u]! - (this.share[t]! * this.share[u]!) / this.own;
        jacobian[t * n + u] = (t === u ? 1 : 0) + answer * this.slope[u]!;
      }
    }
    const step = this.differences(flux);
    solveLu(factorLu(jacobian, n), step);
    return step;
  }
}

const drop = { force: 0, slope: 0 };
