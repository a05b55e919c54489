import type { Reading } from '../../assess/evidence/reading.ts';
import { barPlace } from '../../bench/places.ts';
import { largestSpacing, NOMINAL_LOOP_OHM, neighbourStation, spacedStation } from '../../engine/answers.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import type { TrialBench } from './bench.ts';
import { type Draw, pick } from './part.ts';
import { BELIEVED } from './worlds.ts';

/** How much of each test a learner does before they say what is wrong, and how they note the needle. */
export interface Learner {
  readonly name: string;
  /** Share of the bars read neighbour by neighbour, and with the probes spaced. */
  readonly neighbour: number;
  readonly spaced: number;
  /** Bars the lamp is put to, slots the strip is felt over at each of so many places of the arc. */
  readonly lampBars: number;
  readonly stripShare: number;
  readonly stripPlaces: readonly number[];
  /** Bars looked at. */
  readonly looks: number;
  readonly writes: boolean;
}

const ARC = [120, 150, 180, 210, 240];

export const LEARNERS: readonly Learner[] = [
  {
    name: 'expert',
    neighbour: 1,
    spaced: 1,
    lampBars: 4,
    stripShare: 1,
    stripPlaces: [120, 180],
    looks: 8,
    writes: false,
  },
  {
    name: 'careful',
    neighbour: 1,
    spaced: 0,
    lampBars: 2,
    stripShare: 1,
    stripPlaces: [120],
    looks: 3,
    writes: true,
  },
  {
    name: 'hurried',
    neighbour: 0.5,
    spaced: 0,
    lampBars: 1,
    stripShare: 0,
    stripPlaces: [],
    looks: 0,
    writes: true,
  },
  {
    name: 'spaced only',
    neighbour: 0,
    spaced: 0.6,
    lampBars: 0,
    stripShare: 0,
    stripPlaces: [],
    looks: 0,
    writes: false,
  },
  {
    name: 'strip only',
    neighbour: 0,
    spaced: 0,
    lampBars: 1,
    stripShare: 0.7,
    stripPlaces: ARC,
    looks: 4,
    writes: false,
  },
  {
    name: 'dabbler',
    neighbour: 0.2,
    spaced: 0.1,
    lampBars: 1,
    stripShare: 0.1,
    stripPlaces: [150],
    looks: 2,
    writes: true,
  },
  {
    name: 'guesser',
    neighbour: 0,
    spaced: 0,
    lampBars: 0,
    stripShare: 0,
    stripPlaces: [],
    looks: 1,
    writes: false,
  },
];

/** The spacing of the largest reading, found once for each armature. */
const spacings = new Map<string, number>();
function spacingOf(design: ArmatureDesign, bench: TrialBench): number {
  const known = spacings.get(design.id);
  if (known !== undefined) return known;
  const setup = { mains: bench.mains, excitation: 'high', loopOhm: NOMINAL_LOOP_OHM, windingC: 20 } as const;
  const found = largestSpacing(BELIEVED.solver(design), setup);
  spacings.set(design.id, found);
  return found;
}

/**
 * Everything a learner reads, in the order it is done: the armature lies at one of a few rotations within a slot pitch
 * and is turned by whole bars from there.
 * @param offsets shares of a slot pitch
 */
export function learn(
  learner: Learner,
  bench: TrialBench,
  offsets: readonly number[],
  draw: Draw,
): Reading[] {
  const { design } = bench;
  const start = (pick(draw, offsets) * 360) / design.slots;
  const turned = (station: { first: number; second: number }, step: number) => {
    const bars = [(station.first + step) % design.bars, (station.second + step) % design.bars] as const;
    return bench.meter(bars, start - (360 * step) / design.bars, learner.writes);
  };
  const some = (share: number, count: number) =>
    Array.from({ length: count }, (_, k) => k).filter(() => draw() < share);
  const spaced = () => spacedStation(design, spacingOf(design, bench));
  return [
    ...some(1, learner.looks).map(() => bench.look(pickPlace(design, draw))),
    ...some(learner.spaced, design.bars).map((step) => turned(spaced(), step)),
    ...some(learner.neighbour, design.bars).map((step) => turned(neighbourStation(design), step)),
    ...some(1, learner.lampBars).map(() => {
      return bench.lamp(['shaft', barPlace(Math.floor(draw() * design.bars))]);
    }),
    ...learner.stripPlaces.flatMap((angleDeg) =>
      some(learner.stripShare, design.slots).map((slot) =>
        bench.strip(angleDeg, (angleDeg + start - (360 * slot) / design.slots + 720) % 360),
      ),
    ),
  ];
}

function pickPlace({ bars }: ArmatureDesign, draw: Draw) {
  const bar = Math.floor(draw() * bars);
  return pick(draw, [`bar:${bar}`, `riser:${bar}`, 'core'] as const);
}
