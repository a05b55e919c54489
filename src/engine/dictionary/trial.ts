import { type Topology, windingTopology } from '../circuit/topology.ts';
import type { ArmatureDesign } from '../parts/armature.ts';
import type { ArmatureFault } from '../parts/armatureFault.ts';
import type { Port } from './alteration.ts';

/**
 * How one fault is tried out: on which winding, solved once for many faults, and what is then altered in it. The
 * windings are the sound one, one for each place where a short divides coils, and one for each coil reversed.
 */
export interface Trial {
  /** Fault that makes the winding another than the sound one; null: the sound one. */
  readonly winding: ArmatureFault | null;
  readonly ports: readonly Port[];
  /** Resistance between a bar and the winding; open: the bar is cut off. */
  readonly inFront: { readonly bar: number; readonly ohm: number | 'open' } | null;
}

const SOUND: Trial = { winding: null, ports: [], inFront: null };

/** A single fault, on an armature otherwise sound. One ground or leak, or dirt, changes no current. */
export function trialOf(a: ArmatureDesign, fault: ArmatureFault): Trial {
  switch (fault.kind) {
    case 'openCoil':
      return { ...SOUND, ports: [{ kind: 'inBranch', branch: fault.coil, ohm: 'open' }] };
    case 'riserJoint':
      return riserTrial(a, fault);
    case 'bridgedBars':
      return {
        ...SOUND,
        ports: [{ kind: 'across', from: fault.bar, to: (fault.bar + 1) % a.bars, ohm: fault.ohm }],
      };
    case 'turnShort':
    case 'coilShort': {
      const { from, to } = shortOf(windingTopology(a, [fault]));
      return { ...SOUND, winding: fault, ports: [{ kind: 'across', from, to, ohm: fault.ohm }] };
    }
    case 'reversedCoil':
      return { ...SOUND, winding: fault };
    case 'groundedBar':
    case 'groundedCoil':
    case 'weakInsulation':
    case 'dirtyCommutator':
      return SOUND;
  }
}

function riserTrial(a: ArmatureDesign, fault: ArmatureFault & { readonly kind: 'riserJoint' }): Trial {
  const { bar, form, ohm } = fault;
  const start: Port = { kind: 'inBranch', branch: bar, ohm };
  if (form === 'bar') return { ...SOUND, inFront: { bar, ohm } };
  if (form === 'oneEnd') return { ...SOUND, ports: [start] };
  const end: Port = { ...start, branch: (((bar - a.commutatorPitch) % a.bars) + a.bars) % a.bars };
  // One opening opens the only ring there is; with equalisers there are more, and they hold the bar.
  if (ohm !== 'open' || a.equalised) return { ...SOUND, ports: [start, end] };
  return { ...SOUND, ports: [start], inFront: { bar, ohm } };
}

/** The winding a trial asks for: shorts are left out, to be laid across afterwards with any resistance. */
export function trialTopology(a: ArmatureDesign, { winding }: Trial): Topology {
  const topology = windingTopology(a, winding ? [winding] : []);
  if (winding?.kind !== 'turnShort' && winding?.kind !== 'coilShort') return topology;
  const short = shortOf(topology);
  return { ...topology, segments: topology.segments.filter((s) => s !== short) };
}

/** What a fault joins comes first among the resistors. */
function shortOf(topology: Topology): Topology['segments'][number] {
  return topology.segments[topology.windingSegments]!;
}

/** Bar or coil a fault sits at; -1 for one that has no place. */
export function placeOf(fault: ArmatureFault): number {
  switch (fault.kind) {
    case 'openCoil':
    case 'turnShort':
    case 'groundedCoil':
    case 'reversedCoil':
      return fault.coil;
    case 'riserJoint':
    case 'bridgedBars':
    case 'groundedBar':
      return fault.bar;
    case 'coilShort':
      return fault.topCoil;
    case 'weakInsulation':
    case 'dirtyCommutator':
      return -1;
  }
}

/** The same fault so many places further on. */
export function moved(fault: ArmatureFault, by: number, bars: number): ArmatureFault {
  const on = (place: number) => (((place + by) % bars) + bars) % bars;
  if ('bar' in fault) return { ...fault, bar: on(fault.bar) };
  if ('coil' in fault) return { ...fault, coil: on(fault.coil) };
  if (fault.kind !== 'coilShort') return fault;
  return { ...fault, topCoil: on(fault.topCoil), bottomCoil: on(fault.bottomCoil) };
}
