import type { ArmatureDesign } from '../parts/armature.ts';
import type { ArmatureFault } from '../parts/armatureFault.ts';
import { coilOhm, coilPlaces, endLeakage, equaliserOhm, JOINT_OHM } from '../parts/winding.ts';

/**
 * One branch of the circuit: a coil, a piece of one, or a plain resistor (`coil` -1). `top` and `bottom` are its
 * turns in the top layer of slot `topSlot` (positive) and the bottom layer of slot `bottomSlot` (negative).
 */
export interface Segment {
  readonly from: number;
  readonly to: number;
  readonly ohm: number;
  readonly coil: number;
  readonly topSlot: number;
  readonly bottomSlot: number;
  readonly top: number;
  readonly bottom: number;
  /** Leakage of the coil ends that belong to this piece, H. */
  readonly endLeak: number;
  /** Whether it is a piece of a divided coil. */
  readonly piece: boolean;
}

/** Nodes 0..bars-1 are the bars, node `bars` is the core; any others lie inside the winding. */
export interface Topology {
  readonly nodes: number;
  readonly core: number;
  /** Coils and pieces of coils first, plain resistors after them. */
  readonly segments: readonly Segment[];
  /** How many of the segments are coils or pieces of coils. */
  readonly windingSegments: number;
}

/** A place inside a coil where a fault touches it, counted in conductor sides from its start, 0..2·turns. */
interface Tap {
  readonly side: number;
  readonly node: number;
}

/** A coil end whose connection to its bar is broken or bad: extra ohm, or off altogether. */
type EndState = number | 'open';

/** The winding with its faults applied, as a list of branches. Faults change this list and nothing else. */
export function windingTopology(a: ArmatureDesign, faults: readonly ArmatureFault[]): Topology {
  return new Builder(a, faults).build();
}

class Builder {
  private readonly a: ArmatureDesign;
  private readonly faults: readonly ArmatureFault[];
  private readonly coils: Segment[] = [];
  private readonly resistors: Segment[] = [];
  private readonly junction: number[];
  private readonly ends: EndState[];
  private readonly reversed: Set<number>;
  private readonly taps = new Map<number, Tap[]>();
  private nodes: number;
  private readonly core: number;

  constructor(a: ArmatureDesign, faults: readonly ArmatureFault[]) {
    this.a = a;
    this.faults = faults;
    this.core = a.bars;
    this.nodes = a.bars + 1;
    this.junction = Array.from({ length: a.bars }, (_, bar) => bar);
    this.ends = new Array<EndState>(2 * a.bars).fill(0);
    this.reversed = new Set(faults.flatMap((f) => (f.kind === 'reversedCoil' ? [f.coil] : [])));
  }

  build(): Topology {
    for (const fault of this.faults) this.breakEnds(fault);
    for (const fault of this.faults) this.touch(fault);
    this.addCoils();
    if (this.a.equalised) this.addEqualisers();
    const segments = [...this.coils, ...this.resistors];
    return { nodes: this.nodes, core: this.core, segments, windingSegments: this.coils.length };
  }

  /** Faults of the joints between coil ends and bars. */
  private breakEnds(fault: ArmatureFault): void {
    if (fault.kind === 'openCoil') this.spoil(2 * fault.coil, 'open');
    if (fault.kind !== 'riserJoint') return;
    const { bar, ohm } = fault;
    if (fault.form === 'bar') this.spoilJunction(bar, ohm);
    else this.spoil(this.endAt(bar, bar), ohm);
    if (fault.form === 'bothEnds') this.spoil(this.endAt(this.coilEndingAt(bar), bar), ohm);
  }

  /** Faults that join pieces of metal which should not touch. */
  private touch(fault: ArmatureFault): void {
    const { turns, bars } = this.a;
    const { core } = this;
    const join = (from: number, to: number) => this.resistor(from, to, (fault as { ohm: number }).ohm);
    if (fault.kind === 'bridgedBars') join(fault.bar, (fault.bar + 1) % bars);
    if (fault.kind === 'groundedBar') join(fault.bar, core);
    if (fault.kind === 'groundedCoil') join(this.tap(fault.coil, 2 * turns * fault.fraction), core);
    if (fault.kind === 'turnShort') this.shortTurns(fault.coil, fault.turns, fault.ohm);
    if (fault.kind === 'coilShort')
      join(this.tap(fault.topCoil, 0.5), this.tap(fault.bottomCoil, 2 * turns - 0.5));
    if (fault.kind === 'weakInsulation') join(this.anyWindingNode(), core);
  }

  /** The shorted turns lie in the middle of the coil. */
  private shortTurns(coil: number, turns: number, ohm: number): void {
    const first = 2 * Math.floor((this.a.turns - turns) / 2);
    this.resistor(this.tap(coil, first), this.tap(coil, first + 2 * turns), ohm);
  }

  private addCoils(): void {
    const places = coilPlaces(this.a);
    places.forEach((place, coil) => {
      const [first, last] = this.reversed.has(coil)
        ? [place.endBar, place.startBar]
        : [place.startBar, place.endBar];
      const from = this.endNode(2 * coil, first);
      const to = this.endNode(2 * coil + 1, last);
      this.addCoil(coil, place.topSlot, place.bottomSlot, from, to);
    });
  }

  /** One branch for a whole coil, several where faults touch it inside. */
  private addCoil(coil: number, topSlot: number, bottomSlot: number, from: number, to: number): void {
    const sides = 2 * this.a.turns;
    const taps = [...(this.taps.get(coil) ?? [])].sort((p, q) => p.side - q.side);
    const stops = [...taps, { side: sides, node: to }];
    let here: Tap = { side: 0, node: from };
    stops.forEach((stop, k) => {
      const share = (stop.side - here.side) / sides;
      const joints =
        (k === 0 ? this.jointOhm(2 * coil) : 0) + (k === stops.length - 1 ? this.jointOhm(2 * coil + 1) : 0);
      this.coils.push({
        from: here.node,
        to: stop.node,
        ohm: coilOhm(this.a) * share + joints,
        coil,
        topSlot,
        bottomSlot,
        top: sidesBetween(here.side, stop.side, 0),
        bottom: -sidesBetween(here.side, stop.side, 1),
        endLeak: endLeakage(this.a) * share,
        piece: taps.length > 0,
      });
      here = stop;
    });
  }

  /** Points one pole pair apart, joined in a ring; two points by one connection. */
  private addEqualisers(): void {
    const { bars, poles } = this.a;
    const pairs = poles / 2;
    const step = bars / pairs;
    const ohm = equaliserOhm(this.a);
    const links = pairs > 2 ? pairs : 1;
    for (let bar = 0; bar < step; bar++) {
      for (let k = 0; k < links; k++)
        this.resistor(this.junction[bar + k * step]!, this.junction[(bar + (k + 1) * step) % bars]!, ohm);
    }
  }

  private resistor(from: number, to: number, ohm: number): void {
    this.resistors.push({
      from,
      to,
      ohm,
      coil: -1,
      topSlot: 0,
      bottomSlot: 0,
      top: 0,
      bottom: 0,
      endLeak: 0,
      piece: false,
    });
  }

  private tap(coil: number, side: number): number {
    const taps = this.taps.get(coil) ?? [];
    this.taps.set(coil, taps);
    const same = taps.find((t) => t.side === side);
    if (same) return same.node;
    const node = this.nodes++;
    taps.push({ side, node });
    return node;
  }

  /** Coil end (2·coil start, 2·coil + 1 end) that lies in the riser of a bar; reversing a coil swaps its ends. */
  private endAt(coil: number, bar: number): number {
    const startsHere = coil === bar;
    return 2 * coil + (startsHere === this.reversed.has(coil) ? 1 : 0);
  }

  private coilEndingAt(bar: number): number {
    const { bars, commutatorPitch } = this.a;
    return (((bar - commutatorPitch) % bars) + bars) % bars;
  }

  private spoil(end: number, ohm: EndState): void {
    const now = this.ends[end]!;
    this.ends[end] = ohm === 'open' || now === 'open' ? 'open' : now + ohm;
  }

  private spoilJunction(bar: number, ohm: EndState): void {
    const node = this.nodes++;
    if (ohm !== 'open') this.resistor(this.junction[bar]!, node, ohm);
    this.junction[bar] = node;
  }

  /** The node a coil end lands on: its riser, or a loose end of its own. */
  private endNode(end: number, bar: number): number {
    return this.ends[end] === 'open' ? this.nodes++ : this.junction[bar]!;
  }

  private jointOhm(end: number): number {
    const extra = this.ends[end]!;
    return JOINT_OHM + (extra === 'open' ? 0 : extra);
  }

  /**
   * Leakage is spread along the winding; one point that surely belongs to it stands for all, because the leakage is
   * some million times the winding's own impedance.
   */
  private anyWindingNode(): number {
    const bar = this.junction.findIndex(
      (_, b) =>
        this.ends[this.endAt(b, b)] !== 'open' && this.ends[this.endAt(this.coilEndingAt(b), b)] !== 'open',
    );
    return this.junction[Math.max(0, bar)]!;
  }
}

/** Sides of one layer (0 top: sides 0, 2, 4 …; 1 bottom: sides 1, 3, 5 …) between two places along a coil. */
function sidesBetween(from: number, to: number, layer: 0 | 1): number {
  return sidesUpTo(to, layer) - sidesUpTo(from, layer);
}

function sidesUpTo(x: number, layer: 0 | 1): number {
  const whole = Math.floor(x / 2);
  const rest = x - 2 * whole;
  return whole + Math.min(1, Math.max(0, rest - layer));
}
