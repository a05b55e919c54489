import { LoopCircuit } from './circuit/loopSolution.ts';
import { newTurnAndPair, PairProbe } from './circuit/pairProbe.ts';
import { type Topology, windingTopology } from './circuit/topology.ts';
import { coldOhms, warmOhms } from './circuit/warmth.ts';
import type { GrowlerSetting } from './closedGrowler.ts';
import type { Drive, Excitation, Mains, OperatingPoint } from './drive.ts';
import {
  BENCH_GROWLER,
  emptyHenry,
  endLeakageHenry,
  type GrowlerDesign,
  mainsIdOf,
  sharedDepth,
  windingOhm,
} from './growler.ts';
import { SlotTable } from './magnetics/slotTable.ts';
import { ToothSaturation } from './magnetics/toothSaturation.ts';
import { SolvedPoint } from './operatingPoint.ts';
import type { ArmatureDesign } from './parts/armature.ts';
import type { ArmatureFault } from './parts/armatureFault.ts';
import { type StripPlaces, stripMap } from './stripMap.ts';
import { ArmatureSweep, type Sweep } from './sweep.ts';

export { checkFault } from './parts/faultRules.ts';
export { barZeroDeg } from './parts/winding.ts';
export { checkWinding } from './parts/windingRules.ts';
export type { StripPlaces, Sweep };

/** A bar, or the core with the shaft it is pressed on. */
export type Metal = 'core' | number;

export interface Impedance {
  readonly re: number;
  readonly im: number;
}

/** How the growler is set and how warm the coils are, whatever the rotation. */
export type Setting = GrowlerSetting & Pick<Drive, 'coilC'>;

/** One armature lying in the cradle of the bench. Solving changes nothing; the same question gives the same answer. */
export interface ArmatureSolver {
  readonly design: ArmatureDesign;
  /** Steady state of growler and armature. Bars named in `drive.meter` must exist. */
  solve(faults: readonly ArmatureFault[], drive: Drive): OperatingPoint;
  /**
   * Impedance between two pieces of metal with the growler off and the coils cold, ohm; null where there is no path.
   * @param peakV voltage put across them, peak: weak insulation may break down above its limit
   */
  path(faults: readonly ArmatureFault[], a: Metal, b: Metal, hz: number, peakV?: number): Impedance | null;
  /** The same armature turned again and again, with nothing kept from one rotation to the next. */
  sweep(faults: readonly ArmatureFault[], setting: Setting): Sweep;
  /** Mean pull on the strip at every place with every slot brought under it in turn, N; slots × places. */
  stripMap(faults: readonly ArmatureFault[], setting: Setting, places: StripPlaces): Float64Array;
}

/** Resistance of an arc track once weak insulation has broken down, ohm. Estimate. */
const ARC_OHM = 200;

/** How many sets of faults a solver remembers the topology of. */
const REMEMBERED = 8;

/** @param design must have passed `checkWinding`, and every fault `checkFault` */
export function createArmatureSolver(
  design: ArmatureDesign,
  growler: GrowlerDesign = BENCH_GROWLER,
): ArmatureSolver {
  return new BenchSolver(design, growler);
}

interface FaultedWinding {
  readonly topology: Topology;
  readonly circuit: LoopCircuit;
  readonly probe: PairProbe;
  /** How warm the winding now is, and its resistances so. */
  coilC: Float64Array | null;
  ohms: Float64Array;
}

class BenchSolver implements ArmatureSolver {
  readonly design: ArmatureDesign;
  private readonly growler: GrowlerDesign;
  private readonly depth: number;
  private readonly table: SlotTable;
  private readonly saturation: ToothSaturation | null;
  private readonly windings = new Map<string, FaultedWinding>();
  private recent: { faults: readonly ArmatureFault[]; winding: FaultedWinding } | null = null;

  constructor(design: ArmatureDesign, growler: GrowlerDesign) {
    this.design = design;
    this.growler = growler;
    this.depth = sharedDepth(growler, design.stackLength);
    this.table = new SlotTable(design, growler);
    this.saturation = growler.teethSaturate ? new ToothSaturation(design, growler, this.table) : null;
  }

  solve(faults: readonly ArmatureFault[], drive: Drive): OperatingPoint {
    return this.point(faults, drive);
  }

  path(faults: readonly ArmatureFault[], a: Metal, b: Metal, hz: number, peakV = 0): Impedance | null {
    const { probe, topology } = this.winding(brokenDown(faults, peakV));
    const i = a === 'core' ? topology.core : a;
    const j = b === 'core' ? topology.core : b;
    if (!probe.joined(i, j)) return null;
    const answer = newTurnAndPair();
    probe.setOhms(coldOhms(topology));
    probe.turnTo(this.table.look(0), endLeakageHenry(this.growler), 2 * Math.PI * hz);
    probe.ask(i, j, answer);
    return { re: answer.zRe, im: answer.zIm };
  }

  sweep(faults: readonly ArmatureFault[], setting: Setting): Sweep {
    const { design, growler, depth, table, saturation } = this;
    const topology = windingTopology(design, faults);
    const circuit = circuitOf(topology);
    const cold = coldOhms(topology);
    const ohms = setting.coilC ? warmOhms(design, topology, setting.coilC) : cold;
    if (setting.coilC) circuit.setOhms(ohms);
    const swept = { design, growler, depth, table, saturation, topology, circuit, ohms };
    return new ArmatureSweep(swept, setting);
  }

  stripMap(faults: readonly ArmatureFault[], setting: Setting, places: StripPlaces): Float64Array {
    const at = (rotationRad: number) => this.point(faults, { ...setting, rotationRad, meter: null });
    return stripMap(this.design, this.growler, at, places);
  }

  private point(faults: readonly ArmatureFault[], drive: Drive): SolvedPoint {
    const { design, growler, depth, saturation } = this;
    const w = this.winding(faults);
    this.warm(w, drive.coilC);
    const where = {
      place: this.table.look(drive.rotationRad),
      rotation: drive.rotationRad,
      omega: 2 * Math.PI * drive.mains.hz,
    };
    return new SolvedPoint({ design, growler, depth, saturation, ...w, ...where }, drive, drive.meter);
  }

  private winding(faults: readonly ArmatureFault[]): FaultedWinding {
    if (this.recent?.faults !== faults) this.recent = { faults, winding: this.lookUp(faults) };
    return this.recent.winding;
  }

  private lookUp(faults: readonly ArmatureFault[]): FaultedWinding {
    const key = JSON.stringify(faults);
    const known = this.windings.get(key);
    if (known) return known;
    if (this.windings.size >= REMEMBERED) this.windings.delete(this.windings.keys().next().value as string);
    const made = this.fresh(faults);
    this.windings.set(key, made);
    return made;
  }

  private fresh(faults: readonly ArmatureFault[]): FaultedWinding {
    const { design, depth } = this;
    const topology = windingTopology(design, faults);
    const circuit = circuitOf(topology);
    const ohms = coldOhms(topology);
    const probe = new PairProbe(design, depth, topology, circuit, ohms);
    return { topology, circuit, probe, coilC: null, ohms };
  }

  /** Brings the resistances to what the coils now have, when that has changed. */
  private warm(w: FaultedWinding, coilC: ArrayLike<number> | undefined): void {
    if (sameNumbers(w.coilC, coilC ?? null)) return;
    w.coilC = coilC ? Float64Array.from(coilC) : null;
    w.ohms = w.coilC ? warmOhms(this.design, w.topology, w.coilC) : coldOhms(w.topology);
  }
}

function circuitOf(topology: Topology): LoopCircuit {
  return new LoopCircuit({
    nodes: topology.nodes,
    branches: topology.segments,
    inductive: topology.windingSegments,
  });
}

function sameNumbers(a: ArrayLike<number> | null, b: ArrayLike<number> | null): boolean {
  if (a === null || b === null) return a === b;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return a.length === b.length;
}

/** Weak insulation under a voltage above its limit is a ground. */
function brokenDown(faults: readonly ArmatureFault[], peakV: number): readonly ArmatureFault[] {
  const breaks = (f: ArmatureFault) =>
    f.kind === 'weakInsulation' && f.breakdownV !== null && peakV > f.breakdownV;
  if (!faults.some(breaks)) return faults;
  return faults.map((f) =>
    f.kind === 'weakInsulation' && breaks(f) ? { ...f, ohm: Math.min(f.ohm, ARC_OHM) } : f,
  );
}

/** What the growler does with nothing in its jaws. */
export function emptyCradle(
  mains: Mains,
  excitation: Excitation,
  windingC: number,
  growler: GrowlerDesign = BENCH_GROWLER,
): { readonly growlerA: number; readonly growlerW: number; readonly fluxWb: number } {
  const winding = growler.windings[mainsIdOf(mains)][excitation];
  const ohm = windingOhm(winding, windingC);
  const x = 2 * Math.PI * mains.hz * winding.turns ** 2 * emptyHenry(growler);
  const growlerA = mains.volt / Math.hypot(ohm, x);
  const fluxWb = (Math.SQRT2 * growlerA * x) / (2 * Math.PI * mains.hz * winding.turns);
  return { growlerA, growlerW: growlerA ** 2 * ohm, fluxWb };
}
