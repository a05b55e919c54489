import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { JOINT_OHM } from '../../engine/parts/winding.ts';
import type { JointedWinding, Port } from './joints.ts';
import type { SuspectBlock } from './suspects.ts';
import { type Alteration, CUT_OFF_OHM } from './thevenin.ts';

/**
 * A parted joint, ohm. Not infinite: two of them may split the winding in two, where nothing would be left to solve.
 * Some microamperes are all it lets through.
 */
const PARTED_OHM = 1e5;

/** G⁻¹ of putting some ohms in series with a joint: ΔG = 1/(J+ρ) − 1/J. */
function inSeries(ohm: number | 'open'): number {
  return -(JOINT_OHM + (JOINT_OHM * JOINT_OHM) / (ohm === 'open' ? PARTED_OHM : ohm));
}

const behind = (ohm: number | 'open') => (ohm === 'open' ? CUT_OFF_OHM : ohm);

/** Bar `bar` and the next. */
export function barsPort(design: ArmatureDesign, bar: number): Port {
  return { a: bar, b: (bar + 1) % design.bars, outside: true };
}

export function coilEndingAt({ bars, commutatorPitch }: ArmatureDesign, bar: number): number {
  return (((bar - commutatorPitch) % bars) + bars) % bars;
}

/**
 * A suspect as an alteration of the jointed winding. Shorts inside coils need a winding divided there: for those see
 * `dividedWinding`, whose port takes the short's own resistance.
 */
export function alterationOf(
  design: ArmatureDesign,
  winding: JointedWinding,
  { kind, severities }: Pick<SuspectBlock, 'kind' | 'severities'>,
  place: number,
  severity: number,
): Alteration {
  const { ohm } = severities[severity]!;
  const start = winding.starts[place]!;
  switch (kind) {
    case 'openCoil':
      return joints([start], 'open');
    case 'jointOneEnd':
      return joints([start], ohm);
    case 'jointBar':
      return { ports: [], inverse: [], inFront: [{ bar: place, ohm: behind(ohm) }] };
    case 'jointBothEnds':
      return bothEnds(design, winding, place, ohm);
    case 'bridge':
      return { ports: [barsPort(design, place)], inverse: [behind(ohm)], inFront: [] };
    case 'reversed':
      return reversed(winding, place);
    case 'turnShort':
    case 'coilShort':
      throw new Error(`${kind} divides a coil`);
  }
}

function joints(ports: readonly Port[], ohm: number | 'open'): Alteration {
  return { ports, inverse: ports.map(() => inSeries(ohm)), inFront: [] };
}

/**
 * With both ends off and apart the ring is open and the bar cut off. Parting one joint opens the ring; the coil still
 * hanging on the bar hangs on nothing else.
 */
function bothEnds(
  design: ArmatureDesign,
  winding: JointedWinding,
  bar: number,
  ohm: number | 'open',
): Alteration {
  const start = winding.starts[bar]!;
  const end = winding.ends[coilEndingAt(design, bar)]!;
  // Equalisers still hold the bar.
  if (ohm !== 'open' || design.equalised) return joints([start, end], ohm);
  return { ...joints([start], 'open'), inFront: [{ bar, ohm: CUT_OFF_OHM }] };
}

/** Both joints parted and the ends put on one another's bars. */
function reversed({ starts, ends }: JointedWinding, coil: number): Alteration {
  const start = starts[coil]!;
  const end = ends[coil]!;
  const crossed = [
    { a: start.a, b: end.b, outside: false },
    { a: end.a, b: start.b, outside: false },
  ];
  return {
    ports: [start, end, ...crossed],
    inverse: [inSeries('open'), inSeries('open'), JOINT_OHM, JOINT_OHM],
    inFront: [],
  };
}
