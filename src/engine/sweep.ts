import { newInductances, segmentInductances } from './circuit/inductance.ts';
import type { LoopCircuit, LoopSolution } from './circuit/loopSolution.ts';
import type { Topology } from './circuit/topology.ts';
import { ClosedGrowler, type GrowlerSetting, type PairAnswer } from './closedGrowler.ts';
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
}

export class ArmatureSweep implements Sweep {
  readonly design: ArmatureDesign;
  private readonly swept: Swept;
  private readonly setting: GrowlerSetting;
  private readonly matrix: Float64Array;
  private readonly inductances: ReturnType<typeof newInductances>;
  private readonly solution: LoopSolution;
  private readonly closed = new ClosedGrowler();
  private readonly pair: PairAnswer = { tRe: 0, tIm: 0, zRe: 0, zIm: 0 };

  /** @param swept with a circuit of its own, already as warm as it is to be */
  constructor(swept: Swept, setting: GrowlerSetting) {
    this.design = swept.design;
    this.swept = swept;
    this.setting = setting;
    this.matrix = new Float64Array((swept.design.slots + 1) ** 2);
    this.inductances = newInductances(swept.topology.windingSegments);
    this.solution = swept.circuit.newSolution();
    this.turnTo(0);
  }

  turnTo(rotationRad: number): void {
    const { design, growler, depth, table, saturation, topology, circuit } = this.swept;
    const shift = table.matrixAt(rotationRad, this.matrix);
    segmentInductances(design, depth, topology, this.matrix, shift, this.inductances);
    const own = depth * this.matrix[0]! + endLeakageHenry(growler);
    const omega = 2 * Math.PI * this.setting.mains.hz;
    circuit.solve(this.inductances, omega, own, this.solution);
    this.closed.close(growler, this.setting, this.solution, rotationRad, saturation);
  }

  growlerA(): number {
    const { re, im } = this.closed.windingCurrent(this.closed.idleRe, this.closed.idleIm);
    return Math.sqrt(re * re + im * im);
  }

  reading(barA: number, barB: number, loopOhm: number): number {
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
