import { TEST_VOLTS } from '../engine/instruments/insulationTester.ts';
import { REMEDIES } from '../engine/parts/remedies.ts';
import { type Action, BENCH_CARES, BRUSHES, GAUGES, type MatPart, PREPARATIONS, RANGES_A } from './action.ts';
import { type CommutatorGeometry, STRIP_ARC_DEG } from './geometry.ts';
import type { Observation } from './observation.ts';
import { ALL_LEADS, type LeadId } from './places.ts';

/** Everything that can be done with a control, a tool or a part as a whole, whether it can be done now or not. */

export type Control =
  | 'preparation'
  | 'selector'
  | 'range'
  | 'armature'
  | MatPart
  | 'strip'
  | 'gauges'
  | 'tester'
  | 'drop'
  | 'remedies'
  | 'bench'
  | LeadId;
export const CONTROLS: readonly Control[] = [
  'preparation',
  'selector',
  'range',
  'armature',
  'fieldFrame',
  'brushPlate',
  ...ALL_LEADS,
  'strip',
  'gauges',
  'tester',
  'drop',
  'remedies',
  'bench',
];

/** Height at which the strip is first held above the core, mm. */
export const USUAL_STRIP_MM = 0.5;
/** Steps in which the strip is moved by keys and in words, degrees. */
export const STRIP_STEP_DEG = 5;

export function acts(control: Control, geometry: CommutatorGeometry, seen: Observation): readonly Action[] {
  switch (control) {
    case 'preparation':
      return PREPARATIONS.map((item) => ({ type: 'prepare.check', item }));
    case 'selector':
      return (['off', 'low', 'high'] as const).map((to) => ({ type: 'selector.turn', to }));
    case 'range':
      return RANGES_A.map((to) => ({ type: 'range.turn', to }));
    case 'armature':
      return armatureActs(360 / geometry.bars);
    case 'fieldFrame':
      return [...matActs(control), { type: 'brushes.part' }, { type: 'brushes.join' }];
    case 'brushPlate':
      return matActs(control);
    case 'strip':
      return stripActs(seen);
    case 'gauges':
      return GAUGE_ACTS;
    case 'tester':
      return TESTER_ACTS;
    case 'drop':
      return [{ type: 'drop.feed', at: null }];
    case 'remedies':
      return REMEDY_ACTS;
    case 'bench':
      return BENCH_CARES.map((what) => ({ type: 'bench.setRight', what }));
    default:
      return leadActs(control);
  }
}

const GAUGE_ACTS: readonly Action[] = GAUGES.flatMap((gauge): Action[] =>
  gauge === 'brushLength'
    ? BRUSHES.map((brush) => ({ type: 'gauge.read', gauge, brush }))
    : [{ type: 'gauge.read', gauge }],
);

const TESTER_ACTS: readonly Action[] = [
  ...TEST_VOLTS.map((to): Action => ({ type: 'tester.volts', to })),
  { type: 'tester.press', on: true },
  { type: 'tester.press', on: false },
  { type: 'tester.discharge' },
];

/** A riser is resoldered where it is: it stands with the places. */
const REMEDY_ACTS: readonly Action[] = REMEDIES.filter((remedy) => remedy !== 'resolderRiser').map(
  (remedy): Action => ({ type: 'remedy.do', remedy }),
);

function matActs(part: MatPart): Action[] {
  return [
    { type: 'part.takeUp', part },
    { type: 'part.putBack', part },
  ];
}

function armatureActs(oneBarDeg: number): Action[] {
  return [
    { type: 'armature.place' },
    { type: 'armature.lift' },
    { type: 'armature.hold' },
    { type: 'armature.release' },
    { type: 'armature.turn', byDeg: oneBarDeg },
    { type: 'armature.turn', byDeg: -oneBarDeg },
    { type: 'armature.turn', byDeg: 5 },
    { type: 'armature.turn', byDeg: -5 },
  ];
}

function leadActs(lead: LeadId): Action[] {
  return [
    { type: 'lead.take', lead, grip: 'handle' },
    { type: 'lead.take', lead, grip: 'tip' },
    { type: 'lead.lean', lead, on: true },
    { type: 'lead.lean', lead, on: false },
    { type: 'lead.lift', lead },
    { type: 'lead.clamp', lead },
    { type: 'lead.holster', lead },
  ];
}

/** Over the top first; from there a step either way along the arc, nearer and further. */
function stripActs({ strip }: Observation): Action[] {
  const { angleDeg, heightMm } = strip;
  const hold = (angle: number, height: number): Action => ({
    type: 'strip.hold',
    angleDeg: Math.min(STRIP_ARC_DEG.to, Math.max(STRIP_ARC_DEG.from, angle)),
    heightMm: height,
  });
  const moves =
    angleDeg === null || heightMm === null
      ? [hold((STRIP_ARC_DEG.from + STRIP_ARC_DEG.to) / 2, USUAL_STRIP_MM)]
      : [
          hold(angleDeg + STRIP_STEP_DEG, heightMm),
          hold(angleDeg - STRIP_STEP_DEG, heightMm),
          hold(angleDeg, heightMm + 0.5),
          hold(angleDeg, Math.max(USUAL_STRIP_MM, heightMm - 0.5)),
        ];
  return [{ type: 'strip.take' }, ...moves, { type: 'strip.away' }, { type: 'strip.hang' }];
}
