import { coilPlaces } from '../../../src/engine/parts/winding.ts';
import { FORCED_WAVE_35, LAP_28, WAVE_23, WAVE_25 } from '../../engine/support/parts.ts';
import { between, equal, rowsOf, type Value, type WitnessCase, type WitnessGroup } from '../case.ts';
import {
  backPitch,
  can,
  closedCircuits,
  coilsBetweenNeighbours,
  dummyBranches,
  equaliserSteps,
  equalisers,
  frontPitch,
  lap,
  lapPitches,
  list,
  middle,
  oddSides,
  paths,
  spans,
  wave,
  wavePitches,
} from '../support/windings.ts';

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

export const winding: WitnessGroup = {
  title: 'Windings',
  about:
    'Which windings exist, and how coils, bars, paths and equalisers follow from the counts. Simplex only.',
  cases: [...pitches, ...sides, ...rings],
};
