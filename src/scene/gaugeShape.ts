import type { GaugeKind } from '../bench/action.ts';

/** A gauge with a hand; a brush is laid to a rule. */
export type Dialled = Exclude<GaugeKind, 'brushLength'>;

/** What one turn of a gauge's hand stands for, and its strokes. */
export interface Dial {
  /** mm a turn. */
  readonly turnMm: number;
  /** mm from stroke to stroke: what an eye tells apart there. */
  readonly strokeMm: number;
  /** Figures round the dial, evenly spread from the top. */
  readonly figures: readonly string[];
}

/** Dials of each gauge, the finest first: on a longer reading one of a longer reach is taken. */
const DIALS: Readonly<Record<Dialled, readonly Dial[]>> = {
  diameter: [{ turnMm: 10, strokeMm: 0.1, figures: ['0', '2', '4', '6', '8'] }],
  runOut: [
    { turnMm: 0.5, strokeMm: 0.01, figures: ['0', '.1', '.2', '.3', '.4'] },
    { turnMm: 5, strokeMm: 0.1, figures: ['0', '1', '2', '3', '4'] },
  ],
  undercut: [
    { turnMm: 2, strokeMm: 0.05, figures: ['0', '.5', '1', '1.5'] },
    { turnMm: 10, strokeMm: 0.1, figures: ['0', '2', '4', '6', '8'] },
  ],
};

/** @param mm what is read */
export function dialFor(gauge: Dialled, mm: number): Dial {
  const dials = DIALS[gauge];
  return dials.find(({ turnMm }) => mm < turnMm) ?? dials.at(-1)!;
}

/** Where the hand stands, rad clockwise from the top; a diameter goes round more than once. */
export function handAngle({ turnMm }: Dial, mm: number): number {
  return 2 * Math.PI * (mm / turnMm);
}

/** A straight scale of mm, as beam and rule carry. */
export interface Ruled {
  /** Length shown, mm. */
  readonly spanMm: number;
  /** mm from stroke to stroke, and from figure to figure. */
  readonly strokeMm: number;
  readonly figureMm: number;
}

const RULES: readonly Ruled[] = [
  { spanMm: 20, strokeMm: 0.5, figureMm: 5 },
  { spanMm: 60, strokeMm: 2, figureMm: 10 },
  { spanMm: 220, strokeMm: 10, figureMm: 50 },
];

/** Beam of a calliper or rule long enough for a reading. */
export function ruledFor(mm: number): Ruled {
  return RULES.find(({ spanMm }) => mm < spanMm - 1) ?? RULES.at(-1)!;
}
