import type { Station, TestSetup } from '../answers.ts';
import { newInductances, segmentInductances } from '../circuit/inductance.ts';
import { LoopCircuit, type LoopSolution } from '../circuit/loopSolution.ts';
import { newTurnAndPair } from '../circuit/pairProbe.ts';
import type { Topology } from '../circuit/topology.ts';
import { ClosedGrowler } from '../closedGrowler.ts';
import { BENCH_GROWLER, endLeakageHenry, type GrowlerDesign, sharedDepth } from '../growler.ts';
import { SlotTable } from '../magnetics/slotTable.ts';
import { ToothSaturation } from '../magnetics/toothSaturation.ts';
import type { ArmatureDesign } from '../parts/armature.ts';
import type { ArmatureFault } from '../parts/armatureFault.ts';
import { AlterableWinding } from './alteration.ts';
import { singleFaults } from './singleFaults.ts';
import { moved, placeOf, type Trial, trialOf, trialTopology } from './trial.ts';

/** What the ammeter reads for every one of many faults, at every slot position of one turn. */
export interface FaultDictionary {
  readonly faults: readonly ArmatureFault[];
  readonly stations: readonly Station[];
  /** Slot positions: at position k the armature has been turned back by k slot pitches, so slot k stands where slot 0 stood. */
  readonly positions: number;
  /** Reading for fault f at position k and station s, A, at (f·positions + k)·stations + s. */
  readonly amps: Float64Array;
  /** The same for the armature without fault, positions × stations. */
  readonly sound: Float64Array;
}

/** Bars under a station at a slot position. */
export function barsAt(a: ArmatureDesign, { first, second }: Station, position: number): Station {
  const step = Math.round((position * a.bars) / a.slots);
  return { first: (first + step) % a.bars, second: (second + step) % a.bars };
}

/**
 * A fault at bar c with the armature turned back by k slots answers as the same fault k slots before c unturned, so
 * one turn of one winding holds every place of a fault; only a dummy coil makes all places and positions different.
 * Grades of a fault are altered in the solved winding, never solved again.
 * @param stations bars under the probes at position 0
 * @param faults   each alone on the armature; left out: every single fault of `singleFaults`
 */
export function faultDictionary(
  design: ArmatureDesign,
  setup: TestSetup,
  stations: readonly Station[],
  faults: readonly ArmatureFault[] = singleFaults(design),
  growler: GrowlerDesign = BENCH_GROWLER,
): FaultDictionary {
  return new Builder(design, setup, stations, faults, growler).build();
}

/** A fault of the list by its kind and grade, wherever it sits. */
interface Variant {
  /** At bar or coil 0. */
  readonly atZero: ArmatureFault;
  /** Number in the list of this fault at each place, -1 where the list does not have it. */
  readonly numbers: Int32Array;
}

interface SolvedTrial {
  readonly topology: Topology;
  readonly circuit: LoopCircuit;
  readonly inductances: ReturnType<typeof newInductances>;
  readonly solution: LoopSolution;
  readonly winding: AlterableWinding;
}

class Builder {
  private readonly a: ArmatureDesign;
  private readonly setup: TestSetup;
  private readonly stations: readonly Station[];
  private readonly faults: readonly ArmatureFault[];
  private readonly growler: GrowlerDesign;
  private readonly depth: number;
  private readonly table: SlotTable;
  private readonly saturation: ToothSaturation | null;
  private readonly matrix: Float64Array;
  private readonly closed = new ClosedGrowler();
  private readonly asked = newTurnAndPair();
  private readonly amps: Float64Array;
  private readonly sound: Float64Array;
  /** Whether every slot is like every other. */
  private readonly alike: boolean;

  constructor(
    a: ArmatureDesign,
    setup: TestSetup,
    stations: readonly Station[],
    faults: readonly ArmatureFault[],
    growler: GrowlerDesign,
  ) {
    this.a = a;
    this.setup = setup;
    this.stations = stations;
    this.faults = faults;
    this.growler = growler;
    this.depth = sharedDepth(growler, a.stackLength);
    this.table = new SlotTable(a, growler);
    this.saturation = growler.teethSaturate ? new ToothSaturation(a, growler, this.table) : null;
    this.matrix = new Float64Array((a.slots + 1) ** 2);
    this.amps = new Float64Array(faults.length * a.slots * stations.length);
    this.sound = new Float64Array(a.slots * stations.length);
    this.alike = a.dummyPlace === undefined;
  }

  build(): FaultDictionary {
    const { faults, stations, amps, sound } = this;
    const whole: Variant[] = [];
    const others = new Map<string, Variant[]>();
    for (const variant of this.variants()) {
      const { winding } = trialOf(this.a, variant.atZero);
      if (winding === null) whole.push(variant);
      else push(others, JSON.stringify({ ...winding, ohm: 0 }), variant);
    }
    this.trySound(whole);
    for (const group of others.values()) this.tryWinding(group);
    return { faults, stations, positions: this.a.slots, amps, sound };
  }

  private variants(): Variant[] {
    const { bars } = this.a;
    const known = new Map<string, Variant>();
    this.faults.forEach((fault, number) => {
      const place = Math.max(0, placeOf(fault));
      const atZero = moved(fault, -place, bars);
      const key = JSON.stringify(atZero);
      const variant = known.get(key) ?? { atZero, numbers: new Int32Array(bars).fill(-1) };
      known.set(key, variant);
      variant.numbers[place] = number;
    });
    return [...known.values()];
  }

  /** All that only alters the sound winding: with slots alike one solution serves every place and position. */
  private trySound(variants: readonly Variant[]): void {
    const { a } = this;
    const trial = this.prepare(trialOf(a, { kind: 'dirtyCommutator' }));
    for (let k = 0; k < (this.alike ? 1 : a.slots); k++) {
      this.turn(trial, k);
      this.stations.forEach((station, s) => {
        const amps = this.read(trial, trialOf(a, { kind: 'dirtyCommutator' }), station, k);
        for (const at of this.alike ? Array(a.slots).keys() : [k])
          this.sound[at * this.stations.length + s] = amps;
      });
      for (const { atZero, numbers } of variants) {
        for (let place = 0; place < a.bars; place++) {
          if (this.wanted(numbers, place))
            this.write(numbers, trial, trialOf(a, moved(atZero, place, a.bars)), place, k);
        }
      }
    }
  }

  /** Faults that make windings of their own, by place: with slots alike one slot's coils turned once round serve all. */
  private tryWinding(variants: readonly Variant[]): void {
    const { a } = this;
    for (let place = 0; place < (this.alike ? a.coilsPerSlot : a.bars); place++) {
      const here = variants.filter(({ numbers }) => this.wanted(numbers, place));
      if (here.length === 0) continue;
      const trials = here.map(({ atZero }) => trialOf(a, moved(atZero, place, a.bars)));
      const solved = this.prepare(trials[0]!);
      for (let k = 0; k < a.slots; k++) {
        this.turn(solved, k);
        here.forEach(({ numbers }, v) => {
          this.write(numbers, solved, trials[v]!, place, k);
        });
      }
    }
  }

  /** Whether the list has the fault at a place; with slots alike, at any that a turn makes of it. */
  private wanted(numbers: Int32Array, place: number): boolean {
    if (!this.alike) return numbers[place]! >= 0;
    const u = this.a.coilsPerSlot;
    for (let there = place % u; there < numbers.length; there += u) if (numbers[there]! >= 0) return true;
    return false;
  }

  private prepare(trial: Trial): SolvedTrial {
    const topology = trialTopology(this.a, trial);
    const inductive = topology.windingSegments;
    const circuit = new LoopCircuit({ nodes: topology.nodes, branches: topology.segments, inductive });
    const winding = new AlterableWinding(circuit);
    return {
      topology,
      circuit,
      inductances: newInductances(inductive),
      solution: circuit.newSolution(),
      winding,
    };
  }

  private rotation(position: number): number {
    return (-2 * Math.PI * position) / this.a.slots;
  }

  private turn({ topology, circuit, inductances, solution, winding }: SolvedTrial, position: number): void {
    const shift = this.table.matrixAt(this.rotation(position), this.matrix);
    segmentInductances(this.a, this.depth, topology, this.matrix, shift, inductances);
    const own = this.depth * this.matrix[0]! + endLeakageHenry(this.growler);
    winding.load(circuit.solve(inductances, 2 * Math.PI * this.setup.mains.hz, own, solution));
  }

  private write(
    numbers: Int32Array,
    solved: SolvedTrial,
    trial: Trial,
    place: number,
    position: number,
  ): void {
    this.stations.forEach((station, s) => {
      const amps = this.read(solved, trial, station, position);
      if (this.alike) this.putAllRound(numbers, place, position, s, amps);
      else this.put(numbers[place]!, position, s, amps);
    });
  }

  private putAllRound(
    numbers: Int32Array,
    place: number,
    position: number,
    station: number,
    amps: number,
  ): void {
    const { slots, coilsPerSlot, bars } = this.a;
    for (let k = 0; k < slots; k++) {
      const there = (place + (k - position + slots) * coilsPerSlot) % bars;
      this.put(numbers[there]!, k, station, amps);
    }
  }

  private put(number: number, position: number, station: number, amps: number): void {
    if (number >= 0) this.amps[(number * this.a.slots + position) * this.stations.length + station] = amps;
  }

  private read(
    { winding }: SolvedTrial,
    { ports, inFront }: Trial,
    station: Station,
    position: number,
  ): number {
    const { first, second } = barsAt(this.a, station, position);
    const front = inFront && (inFront.bar === first || inFront.bar === second) ? inFront.ohm : 0;
    if (first === second || front === 'open' || !winding.joined(first, second)) return 0;
    const { asked, closed } = this;
    winding.ask(first, second, ports, asked);
    closed.close(this.growler, this.setup, asked, this.rotation(position), this.saturation);
    return closed.reading(asked, this.setup.loopOhm + front);
  }
}

function push<K, V>(groups: Map<K, V[]>, key: K, value: V): void {
  const known = groups.get(key);
  if (known) known.push(value);
  else groups.set(key, [value]);
}
