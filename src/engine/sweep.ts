import { newInductances, segmentInductances } from './circuit/inductance.ts';
import type { LoopCircuit, LoopSolution } from './circuit/loopSolution.ts';
import { newTurnAndPair, PairProbe } from './circuit/pairProbe.ts';
import type { Topology } from './circuit/topology.ts';
import { ClosedGrowler, type GrowlerSetting } from './closedGrowler.ts';
import { endLeakageHenry, type GrowlerDesign } from './growler.ts';
import type { SlotTable } from './magnetics/slotTable.ts';
import type { ToothSaturation } from './magnetics/toothSaturation.ts';
import type { ArmatureDesign } from './parts/armature.ts';

/**
 * One armature with its faults turned from place to place under one setting of the growler, no ammeter lying. Answers
 * are for the last rotation asked for; turning allocates nothing, and no answer outlives the next turn.
 */
export interface Sweep {
  readonly design: ArmatureDesign;
  /** @param rotationRad any value */
  turnTo(rotationRad: number): void;
  /** Growler current, A rms. */
  growlerA(): number;
  /** Current the ammeter would read between two bars, A. @param loopOhm whole loop, ohm, >= 1e-4 */
  reading(barA: number, barB: number, loopOhm: number): number;
  /** The readings between every two bars a < b, at place b·(b − 1)/2 + a; length bars·(bars − 1)/2. */
  everyPair(loopOhm: number, into: Float64Array): void;
  /** One reading at any rotation, A; the others are not worked out, and the armature stays turned as it was. */
  readingAt(rotationRad: number, barA: number, barB: number, loopOhm: number): number;
}

/** What a sweep turns. */
export interface Swept {
  readonly design: ArmatureDesign;
  readonly growler: GrowlerDesign;
  readonly depth: number;
  readonly table: SlotTable;
  readonly saturation: ToothSaturation | null;
  readonly topology: Topology;
  readonly circuit: LoopCircuit;
  /** Resistance of every branch as warm as it is, ohm. */
  readonly ohms: ArrayLike<number>;
}

export class ArmatureSweep implements Sweep {
  readonly design: ArmatureDesign;
  private readonly swept: Swept;
  private readonly setting: GrowlerSetting;
  private readonly matrix: Float64Array;
  private readonly inductances: ReturnType<typeof newInductances>;
  private readonly solution: LoopSolution;
  private readonly closed = new ClosedGrowler();
  private readonly pair = newTurnAndPair();
  private readonly probe: PairProbe;
  private readonly probed = new ClosedGrowler();
  private readonly ends: number;
  private readonly omega: number;
  /** Rotation asked for, and whether all of it has been solved. */
  private rotation = 0;
  private solved = false;

  /** @param swept with a circuit of its own, already as warm as it is to be */
  constructor(swept: Swept, setting: GrowlerSetting) {
    const { design, depth, topology, circuit, ohms } = swept;
    this.design = design;
    this.swept = swept;
    this.setting = setting;
    this.matrix = new Float64Array((design.slots + 1) ** 2);
    this.inductances = newInductances(topology.windingSegments);
    this.solution = circuit.newSolution();
    this.probe = new PairProbe(design, depth, topology, circuit, ohms);
    this.ends = endLeakageHenry(swept.growler);
    this.omega = 2 * Math.PI * setting.mains.hz;
  }

  turnTo(rotationRad: number): void {
    this.rotation = rotationRad;
    this.solved = false;
  }

  /** Solves the rotation asked for when something is first wanted of it. */
  private solve(): void {
    if (this.solved) return;
    this.solved = true;
    const { design, growler, depth, table, saturation, topology, circuit } = this.swept;
    const shift = table.matrixAt(this.rotation, this.matrix);
    segmentInductances(design, depth, topology, this.matrix, shift, this.inductances);
    const own = depth * this.matrix[0]! + this.ends;
    circuit.solve(this.inductances, this.omega, own, this.solution);
    this.closed.close(growler, this.setting, this.solution, this.rotation, saturation);
  }

  readingAt(rotationRad: number, barA: number, barB: number, loopOhm: number): number {
    if (barA === barB || !this.probe.joined(barA, barB)) return 0;
    const { table, growler, saturation } = this.swept;
    this.probe.turnTo(table.look(rotationRad), this.ends, this.omega);
    this.probe.ask(barA, barB, this.pair);
    this.probed.close(growler, this.setting, this.pair, rotationRad, saturation);
    return this.probed.reading(this.pair, loopOhm);
  }

  growlerA(): number {
    this.solve();
    const { re, im } = this.closed.windingCurrent(this.closed.idleRe, this.closed.idleIm);
    return Math.sqrt(re * re + im * im);
  }

  reading(barA: number, barB: number, loopOhm: number): number {
    this.solve();
    const { island } = this.swept.circuit.forest;
    if (barA === barB || island[barA] !== island[barB]) return 0;
    const { zRe, zIm, tRe, tIm } = this.solution;
    const { pair } = this;
    const n = tRe.length;
    const aa = barA * n + barA;
    const bb = barB * n + barB;
    const ab = barA * n + barB;
    pair.tRe = tRe[barA]! - tRe[barB]!;
    pair.tIm = tIm[barA]! - tIm[barB]!;
    pair.zRe = zRe[aa]! + zRe[bb]! - 2 * zRe[ab]!;
    pair.zIm = zIm[aa]! + zIm[bb]! - 2 * zIm[ab]!;
    return this.closed.reading(pair, loopOhm);
  }

  everyPair(loopOhm: number, into: Float64Array): void {
    let at = 0;
    for (let b = 1; b < this.design.bars; b++) {
      for (let a = 0; a < b; a++) into[at++] = this.reading(a, b, loopOhm);
    }
  }
}
