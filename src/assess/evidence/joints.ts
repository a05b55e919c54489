import { type Segment, type Topology, windingTopology } from '../../engine/circuit/topology.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { ArmatureFault } from '../../engine/parts/armatureFault.ts';
import { JOINT_OHM } from '../../engine/parts/winding.ts';

/** Two nodes between which something may be joined or parted. */
export interface Port {
  readonly a: number;
  readonly b: number;
  /** On the surface of the commutator: a bad joint in front of a bar lies between it and the winding. */
  readonly outside: boolean;
}

/** A winding whose every riser joint is a branch of its own, so that joints can be parted afterwards. */
export interface JointedWinding {
  readonly topology: Topology;
  /** Joint of the end at which coil i starts, bar first; and of the end at which it ends. */
  readonly starts: readonly Port[];
  readonly ends: readonly Port[];
}

/**
 * The same circuit with the 20 µΩ of each riser joint taken out of the coil and put between coil and bar as a resistor.
 * @param faults that divide coils inside but neither open nor reverse one
 */
export function jointedWinding(design: ArmatureDesign, topology: Topology): JointedWinding {
  let nodes = topology.nodes;
  const starts: Port[] = [];
  const ends: Port[] = [];
  const coils = topology.segments.slice(0, topology.windingSegments).map((segment, k, all) => {
    const first = all[k - 1]?.coil !== segment.coil;
    const last = all[k + 1]?.coil !== segment.coil;
    let { from, to } = segment;
    if (first) {
      starts[segment.coil] = { a: from, b: nodes, outside: false };
      from = nodes++;
    }
    if (last) {
      ends[segment.coil] = { a: to, b: nodes, outside: false };
      to = nodes++;
    }
    const joints = (first ? 1 : 0) + (last ? 1 : 0);
    return { ...segment, from, to, ohm: segment.ohm - joints * JOINT_OHM };
  });
  const joints = [...starts, ...ends].map(jointSegment);
  const segments = [...coils, ...joints, ...topology.segments.slice(topology.windingSegments)];
  if (starts.length !== design.bars) throw new Error('every coil has a start');
  return { topology: { ...topology, nodes, segments }, starts, ends };
}

function jointSegment({ a, b }: Port): Segment {
  return {
    from: a,
    to: b,
    ohm: JOINT_OHM,
    coil: -1,
    topSlot: 0,
    bottomSlot: 0,
    top: 0,
    bottom: 0,
    endLeak: 0,
    piece: false,
  };
}

/** A winding divided where a short inside it would touch, the short itself left out. */
export function dividedWinding(
  design: ArmatureDesign,
  short: ArmatureFault & { readonly kind: 'turnShort' | 'coilShort' },
): { readonly topology: Topology; readonly port: Port } {
  const whole = windingTopology(design, [short]);
  // What a fault joins comes first among the resistors.
  const bridge = whole.segments[whole.windingSegments]!;
  const segments = whole.segments.filter((segment) => segment !== bridge);
  return { topology: { ...whole, segments }, port: { a: bridge.from, b: bridge.to, outside: false } };
}
