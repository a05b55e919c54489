import type { RangeA } from '../../bench/action.ts';
import { type ArmatureSolver, createArmatureSolver } from '../../engine/armatureBench.ts';
import type { LoopSolution } from '../../engine/circuit/loopSolution.ts';
import { type Topology, windingTopology } from '../../engine/circuit/topology.ts';
import { ClosedGrowler } from '../../engine/closedGrowler.ts';
import {
  type Drive,
  type Excitation,
  MAINS,
  type Mains,
  type MainsId,
  type OperatingPoint,
} from '../../engine/drive.ts';
import { BENCH_GROWLER, type GrowlerDesign, sharedDepth } from '../../engine/growler.ts';
import { type ShiftedPotentials, SlotTable } from '../../engine/magnetics/slotTable.ts';
import { ToothSaturation } from '../../engine/magnetics/toothSaturation.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { barsPort } from './alterations.ts';
import { dividedWinding, type JointedWinding, jointedWinding, type Port } from './joints.ts';
import { remembered } from './memory.ts';
import { type NeedleTable, needleTable, severityCells } from './needles.ts';
import { Network } from './network.ts';
import { warmthOf } from './noise.ts';
import { solveSources } from './sources.ts';
import { type PullTable, pullTable, type StripHeld } from './strip.ts';
import { faultOf, type SuspectBlock, type Suspects, suspectAt } from './suspects.ts';
import type { Supply } from './thevenin.ts';

/** One way the ammeter can lie: two bars, the armature turned so far, the growler on so hard. */
export interface Laid {
  readonly bars: readonly [number, number];
  readonly rotationDeg: number;
  readonly excitation: Excitation;
}

/** Middle of what a growler winding warms up to, degrees C: from cold to hot, readings change by a third of a per cent. */
const WINDING_C = 45;
/** Angles within one slot pitch that are told apart: 64, as the engine's own table has it. */
const STEPS = 64;
/** Rotations remembered; a few megabytes each. */
const REMEMBERED = 24;
/**
 * Pairs of bars remembered, half a megabyte each: a pass round the part is one of them over and over, but for a forced
 * winding, whose bars and slots do not keep step: there every bar is one of its own.
 */
const TABLES_REMEMBERED = 96;
/** Places of the strip remembered, some sixty kilobytes each: three round the core at every step of a forced winding. */
const PULLS_REMEMBERED = 256;
/** Rotations of the plain winding remembered without turning back, a tenth of a megabyte each. */
const TURNS_REMEMBERED = 64;

/** A winding divided for one short, with where the short goes. */
interface Divided {
  readonly network: Network;
  readonly port: Port;
}

/** The windings solved at one rotation. */
export interface SolvedRotation {
  readonly potentials: ShiftedPotentials;
  readonly jointed: LoopSolution;
  /** By block, by place; empty for blocks that need no winding of their own. */
  readonly divided: readonly (readonly LoopSolution[])[];
}

/** Where a rotation stands: so many slot pitches on, and which of the steps within a pitch. */
export interface Standing {
  readonly slots: number;
  readonly step: number;
}

/**
 * What every suspect does to every reading of one type of armature on one supply. A core looks the same again after
 * one slot pitch, so an armature turned by a pitch with a fault at coil c answers as the unturned one with the fault a
 * slot further on: one pitch at 64 angles is all that ever has to be solved, each angle when first asked for.
 */
export class Dictionary {
  readonly design: ArmatureDesign;
  readonly mains: Mains;
  readonly suspects: Suspects;
  readonly winding: JointedWinding;
  readonly growler: GrowlerDesign;
  /** Depth over which armature and growler share their field, m. */
  readonly depth: number;
  private readonly solver: ArmatureSolver;
  /** What a current does to the winding's resistance while it is read, share per ampere squared. */
  readonly warmth: number;
  private readonly saturation: ToothSaturation | null;
  private readonly table: SlotTable;
  private readonly jointed: Network;
  private readonly divided: readonly (readonly Divided[])[];
  private readonly solved = new Map<number, SolvedRotation>();
  private steadily: SolvedRotation | null = null;
  private readonly turned = new Map<number, LoopSolution>();
  private readonly tables = new Map<string, NeedleTable>();
  private readonly pullTables = new Map<string, PullTable>();
  /** A dummy coil breaks the likeness of the slots. */
  private readonly alike: boolean;

  constructor(suspects: Suspects, mainsId: MainsId, growler: GrowlerDesign = BENCH_GROWLER) {
    const { design, blocks } = suspects;
    this.design = design;
    this.suspects = suspects;
    this.mains = MAINS[mainsId];
    this.growler = growler;
    this.depth = sharedDepth(growler, design.stackLength);
    this.warmth = warmthOf(design);
    this.solver = createArmatureSolver(design, growler);
    this.alike = design.dummyPlace === undefined;
    this.table = new SlotTable(design, growler);
    this.saturation = growler.teethSaturate ? new ToothSaturation(design, growler, this.table) : null;
    this.winding = jointedWinding(design, windingTopology(design, []));
    this.jointed = new Network(design, growler, this.winding.topology);
    this.divided = blocks.map((block) => this.divide(block));
  }

  /** How the growler drives a part at one step: saturation of the teeth taken as with the winding whole. */
  supply(excitation: Excitation, step: number): Supply {
    const { jointed } = this.at(step);
    const setting = { mains: this.mains, excitation, windingC: WINDING_C };
    const closed = new ClosedGrowler();
    closed.close(this.growler, setting, jointed, this.rotationRad(step), this.saturation);
    const n2 = closed.turns * closed.turns;
    return {
      turns: closed.turns,
      ohmRe: closed.zRe - n2 * jointed.ownRe,
      ohmIm: closed.zIm - n2 * jointed.ownIm,
      volt: Math.hypot(closed.idleRe, closed.idleIm) * Math.hypot(closed.zRe, closed.zIm),
    };
  }

  standing(rotationDeg: number): Standing {
    const steps = this.wholeTurnStep(rotationDeg);
    if (!this.alike) return { slots: 0, step: steps };
    return { slots: Math.floor(steps / STEPS), step: steps % STEPS };
  }

  /** Place that a bar or coil has when everything is turned back to the first pitch. */
  turnedBack(place: number, { slots }: Standing): number {
    const { bars, coilsPerSlot } = this.design;
    return (place + slots * coilsPerSlot) % bars;
  }

  rotationRad(step: number): number {
    return (2 * Math.PI * step) / (STEPS * this.design.slots);
  }

  private potentials(step: number): ShiftedPotentials {
    return this.table.at(this.rotationRad(step));
  }

  /** One suspect solved afresh by the engine. */
  solve(
    block: SuspectBlock,
    place: number,
    severity: number,
    drive: Pick<Drive, 'rotationRad' | 'excitation'>,
  ): OperatingPoint {
    const fault = faultOf(this.design, block, place, severity);
    return this.solver.solve([fault], { ...drive, mains: this.mains, windingC: WINDING_C, meter: null });
  }

  /** How far an armature is turned back whose bar is brought to the first slot. */
  standingOf(bar: number): Standing {
    const { slots, coilsPerSlot } = this.design;
    return { slots: this.alike ? (slots - Math.floor(bar / coilsPerSlot)) % slots : 0, step: 0 };
  }

  /** Step of a rotation counted over the whole turn, not turned back. */
  wholeTurnStep(rotationDeg: number): number {
    const turns = rotationDeg / 360;
    const all = this.design.slots * STEPS;
    return Math.round((turns - Math.floor(turns)) * all) % all;
  }

  /** Another winding of the same armature, or null for the plain one, to a steady current. */
  solveSteady(network: Network | null): LoopSolution {
    return network === null ? this.steady().jointed : network.solve(this.potentials(0), 0);
  }

  /** Another winding of the same armature, or null for the plain one, solved at a step of the whole turn. */
  solveTurned(network: Network | null, step: number): LoopSolution {
    const solve = (one: Network) => one.solve(this.potentials(step), this.mains.hz);
    return network === null
      ? remembered(this.turned, step, TURNS_REMEMBERED, () => solve(this.jointed))
      : solve(network);
  }

  network(topology: Topology): Network {
    return new Network(this.design, this.growler, topology);
  }

  bridgePort(bar: number): Port {
    return barsPort(this.design, bar);
  }

  /** Pulls on the strip for every suspect, with the armature turned back to the first pitch. */
  pulls(held: StripHeld, standing: Standing): PullTable {
    const { angleDeg, heightMm, excitation } = held;
    const key = `${angleDeg} ${heightMm} ${standing.step} ${excitation}`;
    return remembered(this.pullTables, key, PULLS_REMEMBERED, () => pullTable(this, held, standing));
  }

  at(step: number): SolvedRotation {
    return remembered(this.solved, step, REMEMBERED, () => this.solveAll(step, this.mains.hz));
  }

  /** The windings to a steady current, to which it is all one how the armature is turned. */
  steady(): SolvedRotation {
    this.steadily ??= this.solveAll(0, 0);
    return this.steadily;
  }

  private solveAll(step: number, hz: number): SolvedRotation {
    const potentials = this.potentials(step);
    return {
      potentials,
      jointed: this.jointed.solve(potentials, hz),
      divided: this.divided.map((block) => block.map(({ network }) => network.solve(potentials, hz))),
    };
  }

  /** Circuit and port of a short inside a coil, by block and place. */
  dividedAt(block: number, place: number): Divided {
    return this.divided[block]![place]!;
  }

  jointedCircuit(): Network {
    return this.jointed;
  }

  /** Where the needle would stand for every suspect, with the armature turned back to the first pitch. */
  needles(laid: Laid & { readonly rangeA: RangeA }, standing: Standing): NeedleTable {
    const { excitation, rangeA } = laid;
    const a = this.turnedBack(laid.bars[0], standing);
    const b = this.turnedBack(laid.bars[1], standing);
    const bars = [Math.min(a, b), Math.max(a, b)] as const;
    const key = `${bars} ${standing.step} ${excitation} ${rangeA}`;
    return remembered(this.tables, key, TABLES_REMEMBERED, () => {
      const sources = solveSources(this, bars, standing.step, excitation);
      return needleTable(sources, severityCells(sources, rangeA, this.suspects.blocks), rangeA, this.warmth);
    });
  }

  /** Number a suspect has when everything is turned back to the first pitch, for all suspects. */
  turnedBackSuspects(standing: Standing): Int32Array {
    const numbers = new Int32Array(this.suspects.count);
    for (const block of this.suspects.blocks) {
      const per = block.severities.length;
      for (let place = 0; place < this.design.bars; place++) {
        const there = suspectAt(block, this.turnedBack(place, standing), 0);
        for (let k = 0; k < per; k++) numbers[suspectAt(block, place, k)] = there + k;
      }
    }
    return numbers;
  }

  private divide(block: SuspectBlock): Divided[] {
    if (block.kind !== 'turnShort' && block.kind !== 'coilShort') return [];
    return Array.from({ length: this.design.bars }, (_, place) => {
      const fault = faultOf(this.design, block, place, 0);
      if (fault.kind !== 'turnShort' && fault.kind !== 'coilShort') throw new Error('not a short');
      const { topology, port } = dividedWinding(this.design, fault);
      return { network: new Network(this.design, this.growler, topology), port };
    });
  }
}
