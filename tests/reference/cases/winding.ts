import { windingTopology } from '../../../src/engine/circuit/topology.ts';
import type { ArmatureDesign } from '../../../src/engine/parts/armature.ts';
import { type CoilPlace, coilPlaces } from '../../../src/engine/parts/winding.ts';
import { checkWinding } from '../../../src/engine/parts/windingRules.ts';
import { FORCED_WAVE_35, LAP_24, LAP_28, WAVE_23, WAVE_25 } from '../../engine/support/parts.ts';
import { between, equal, rowsOf, type Value, type WitnessCase, type WitnessGroup } from '../case.ts';
import { unitRing } from '../support/unitRing.ts';

/** Dimensions thin enough for any of these slot counts, so that only the winding can be at fault. */
const THIN = {
  slotMouth: 0.0004,
  slotWidth: 0.0006,
  conductorArea: 1e-7,
  turns: 1,
  coilsPerSlot: 1,
} as const;

function lap(bars: number, poles: number, change: Partial<ArmatureDesign> = {}): ArmatureDesign {
  const spanSlots = Math.round(bars / poles);
  const counts = { winding: 'lap', poles, bars, slots: bars, commutatorPitch: 1, spanSlots } as const;
  return { ...LAP_28, ...THIN, ...counts, ...change };
}

function wave(bars: number, poles: number, pitch: number): ArmatureDesign {
  return { ...lap(bars, poles), winding: 'wave', commutatorPitch: pitch };
}

const can = (a: ArmatureDesign) => checkWinding(a).length === 0;
const list = (values: readonly number[]) => (values.length > 0 ? values.join(', ') : 'none');

/** Commutator pitches with which a wave of so many bars is accepted. */
function wavePitches(bars: number, poles: number): string {
  const all = Array.from({ length: bars }, (_, pitch) => pitch);
  return list(all.filter((pitch) => can(wave(bars, poles, pitch))));
}

function lapPitches(): string {
  return list([-3, -2, -1, 0, 1, 2, 3].filter((commutatorPitch) => can(lap(24, 4, { commutatorPitch }))));
}

/** Coil spans accepted on so many slots. */
function spans(slots: number, poles: number): number[] {
  const all = Array.from({ length: slots }, (_, i) => i + 1);
  return all.filter((spanSlots) => can(lap(slots, poles, { spanSlots })));
}

/** Numbers of a coil's two sides when top sides are the odd and bottom sides the even ones, slot by slot. */
const topSide = (p: CoilPlace) => 2 * p.topSlot + 1;
const bottomSide = (p: CoilPlace) => 2 * p.bottomSlot + 2;
const backPitch = (a: ArmatureDesign) => bottomSide(coilPlaces(a)[0]!) - topSide(coilPlaces(a)[0]!);

/** From the far side of coil 0 to the near side of the coil it goes on to; positive where it goes back (lap). */
function frontPitch(a: ArmatureDesign): number {
  const places = coilPlaces(a);
  const next = places[places[0]!.endBar]!;
  const forward = topSide(next) - bottomSide(places[0]!);
  return a.winding === 'lap' ? -forward : forward;
}

/**
 * Parallel paths from the resistance between all positive and all negative brushes: C coils in `paths` branches of
 * C/paths each make R = C/paths². Brushes stand a pole pitch apart and touch one bar each.
 */
function paths(a: ArmatureDesign): number {
  const brush = (pole: number) => Math.round((a.bars * pole) / a.poles);
  const links = Array.from({ length: a.poles - 2 }, (_, i) => ({
    from: brush(i),
    to: brush(i + 2),
    ohm: 1e-9,
  }));
  return Math.round(
    Math.sqrt(a.bars / unitRing(a, [], a.winding === 'lap' ? links : [])(brush(0), brush(1))),
  );
}

/** Separate closed circuits of a winding, by walking from bar to bar. */
function closedCircuits(a: ArmatureDesign): number {
  const places = coilPlaces(a);
  const seen = new Set<number>();
  let rings = 0;
  for (let start = 0; start < a.bars; start++) {
    if (seen.has(start)) continue;
    rings++;
    for (let bar = start; !seen.has(bar); bar = places[bar]!.endBar) seen.add(bar);
  }
  return rings;
}

/** Coils passed on the shorter way round the ring from bar 0 to bar 1. */
function coilsBetweenNeighbours(a: ArmatureDesign): number {
  const places = coilPlaces(a);
  const walk = (from: number, to: number) => {
    let n = 0;
    for (let bar = from; bar !== to; bar = places[bar]!.endBar) n++;
    return n;
  };
  return Math.min(walk(0, 1), walk(1, 0));
}

function equaliserSteps(): string {
  const a = lap(36, 6, { equalised: true });
  const links = windingTopology(a, []).segments.filter((s) => s.coil < 0);
  return list([...new Set(links.map((s) => (s.to - s.from + a.bars) % a.bars))]);
}

/** Whether any branch of the circuit lies in the slots of the dummy coil and is not one of the working coils. */
function dummyBranches(): number {
  const working = coilPlaces(FORCED_WAVE_35).length;
  const { windingSegments } = windingTopology(FORCED_WAVE_35, []);
  return windingSegments - working;
}

const equalisers = (a: ArmatureDesign) => (can({ ...a, equalised: true }) ? 'accepted' : 'refused');

const row = rowsOf({
  unit: 'bars',
  source: 'standard theory of closed drum windings',
  verified: '2nd',
  standing: 'independent',
  tolerance: equal,
});
const CALC = { verified: 'calc' } as const;
const exact = (ours: () => Value, reference: Value) => () => ({ ours: ours(), reference });

const pitches: WitnessCase[] = [
  row('W01', 'commutator pitches accepted for a simplex lap', exact(lapPitches, '-1, 1')),
  row(
    'W02',
    'pitches accepted for a simplex wave, 25 bars, 4 poles: (C ± 1)/p',
    exact(() => wavePitches(25, 4), '12, 13'),
  ),
  row(
    'W10-24',
    'the same, 24 bars, 4 poles',
    exact(() => wavePitches(24, 4), 'none'),
    CALC,
  ),
  row(
    'W10-28',
    'the same, 28 bars, 4 poles',
    exact(() => wavePitches(28, 4), 'none'),
    CALC,
  ),
  row(
    'W11-36',
    'the same, 36 bars, 6 poles',
    exact(() => wavePitches(36, 6), 'none'),
    CALC,
  ),
  row(
    'W11-45',
    'the same, 45 bars, 6 poles',
    exact(() => wavePitches(45, 6), 'none'),
    CALC,
  ),
  row(
    'W11-35',
    'the same, 35 bars, 6 poles',
    exact(() => wavePitches(35, 6), '12'),
    CALC,
  ),
  row(
    'W11-37',
    'the same, 37 bars, 6 poles',
    exact(() => wavePitches(37, 6), '12'),
    CALC,
  ),
  row(
    'W12-33',
    'the same, 33 bars, 8 poles',
    exact(() => wavePitches(33, 8), '8'),
    CALC,
  ),
  row(
    'W12-34',
    'the same, 34 bars, 8 poles',
    exact(() => wavePitches(34, 8), 'none'),
    CALC,
  ),
];

const SIDES = {
  unit: 'coil sides',
  source: 'stored manual page on two-layer windings',
  verified: 'yes',
} as const;
const EXAM = { source: 'stored worked exam answer', verified: 'yes' } as const;
const sides: WitnessCase[] = [
  row(
    'W05',
    'back pitch 2C/P + k made odd, lap, 28 bars, 4 poles',
    exact(() => backPitch(LAP_28), 15),
    SIDES,
  ),
  row(
    'W06-lap',
    'front pitch of the same, Y_B - 2·y_c',
    exact(() => frontPitch(LAP_28), 13),
    SIDES,
  ),
  row(
    'W06-wave',
    'front pitch of the wave of 23, 2·y_c - Y_B',
    exact(() => frontPitch(WAVE_23), 22 - 13),
    SIDES,
  ),
  row(
    'W07',
    'back pitches of 11 and 13 on 24 coils, 4 poles, lap',
    exact(
      () => list([5, 6].map((spanSlots) => (can(lap(24, 4, { spanSlots })) ? 2 * spanSlots + 1 : 0))),
      '11, 13',
    ),
    { ...SIDES, source: 'stored manual page, example 3.9' },
  ),
  row(
    'W08-bars',
    'six poles, 36 slots, forced wave: working coils',
    exact(() => coilPlaces(FORCED_WAVE_35).length, 35),
    {
      ...EXAM,
      unit: 'coils',
    },
  ),
  row(
    'W08-pitch',
    'commutator pitches accepted for it',
    exact(() => list([10, 11, 12, 13].filter((p) => can({ ...FORCED_WAVE_35, commutatorPitch: p }))), '12'),
    EXAM,
  ),
  row(
    'W08-back',
    'its back pitch',
    exact(() => backPitch(FORCED_WAVE_35), 13),
    { ...EXAM, unit: 'coil sides' },
  ),
  row(
    'W08-front',
    'its front pitch',
    exact(() => frontPitch(FORCED_WAVE_35), 11),
    { ...EXAM, unit: 'coil sides' },
  ),
  row(
    'W08-dummy',
    'places left for dummy coils',
    exact(() => 36 - coilPlaces(FORCED_WAVE_35).length, 1),
    {
      ...EXAM,
      unit: 'coils',
    },
  ),
  row(
    'W09',
    'pole pitch, 96 slots, 4 poles: middle of the spans accepted',
    exact(() => middle(spans(96, 4)), 24),
    {
      unit: 'slots',
      source: 'stored encyclopaedia page',
      verified: 'yes',
    },
  ),
  row(
    'W15',
    'spans round(S/P) and one below accepted, 23 slots, 4 poles',
    exact(() => list([5, 6].filter((span) => spans(23, 4).includes(span))), '5, 6'),
    { unit: 'slots', verified: 'calc' },
  ),
];

function middle(values: readonly number[]): number {
  return (values[0]! + values.at(-1)!) / 2;
}

const HAWKINS = { source: 'Hawkins Electrical Guide vol. 2', verified: 'yes', unit: '-' } as const;
const rings: WitnessCase[] = [
  row(
    'W03-4',
    'parallel paths of a lap, 4 poles: m·P',
    exact(() => paths(LAP_28), 4),
    { unit: 'paths' },
  ),
  row(
    'W03-6',
    'parallel paths of a lap, 6 poles',
    exact(() => paths(lap(36, 6)), 6),
    { unit: 'paths' },
  ),
  row(
    'W04-4',
    'parallel paths of a wave, 4 poles: 2·m',
    exact(() => paths(WAVE_25), 2),
    { unit: 'paths' },
  ),
  row(
    'W04-6',
    'parallel paths of a wave, 6 poles',
    exact(() => paths(wave(37, 6, 12)), 2),
    { unit: 'paths' },
  ),
  row(
    'W14-1',
    'closed circuits of the wave of 23, pitch 11: gcd',
    exact(() => closedCircuits(WAVE_23), 1),
    {
      ...CALC,
      unit: 'rings',
    },
  ),
  row(
    'W14-5',
    'closed circuits of 25 bars at pitch 10: gcd',
    exact(() => closedCircuits({ ...WAVE_25, commutatorPitch: 10 }), 5),
    { ...CALC, unit: 'rings' },
  ),
  row(
    'W16-4',
    'coils in series between adjacent bars, wave, 4 poles',
    exact(() => coilsBetweenNeighbours(WAVE_25), 2),
    {
      ...CALC,
      unit: 'coils',
    },
  ),
  row(
    'W16-6',
    'the same, 6 poles',
    exact(() => coilsBetweenNeighbours(wave(37, 6, 12)), 3),
    { ...CALC, unit: 'coils' },
  ),
  row('W17', 'bars an equaliser spans, 36 bars, 6 poles: C/p', exact(equaliserSteps, '12'), {
    source: 'Hawkins vol. 2, equalizer rings; spacing from theory',
    verified: 'calc',
  }),
  row(
    'W18-wave',
    'equalisers on a wave winding',
    exact(() => equalisers(WAVE_23), 'refused'),
    HAWKINS,
  ),
  row(
    'W18-lap',
    'equalisers on a four-pole lap winding',
    exact(() => equalisers(LAP_28), 'accepted'),
    HAWKINS,
  ),
  row('W19', 'coil sides of any closed winding, remainder by 2', exact(oddSides, 0), {
    ...HAWKINS,
    source: 'Hawkins vol. 2, drum winding requirements, item 1',
  }),
  row('W20', 'branches of the circuit in the place of the dummy coil', exact(dummyBranches, 0), {
    unit: 'branches',
    source: 'W08; common textbook',
  }),
  row(
    'W-span',
    'chorded by up to a third of a pole pitch, 24 slots, 4 poles: smallest span accepted',
    () => ({
      ours: spans(24, 4)[0]!,
    }),
    { unit: 'slots', tolerance: between(4, 5), verified: 'practice', source: 'common practice, no source' },
  ),
];

function oddSides(): number {
  const counted = [WAVE_23, LAP_28, LAP_24, FORCED_WAVE_35].map((a) => {
    const { segments, windingSegments } = windingTopology(a, []);
    const sides = segments.slice(0, windingSegments).map((s) => s.top - s.bottom);
    return sides.reduce((sum, n) => sum + n, 0) % 2;
  });
  return Math.max(...counted);
}

export const winding: WitnessGroup = {
  title: 'Windings',
  about:
    'Which windings exist, and how coils, bars, paths and equalisers follow from the counts. Simplex only.',
  cases: [...pitches, ...sides, ...rings],
};
