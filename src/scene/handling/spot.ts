import type { Place } from '../../bench/places.ts';
import type { Point } from '../project.ts';
import { distanceTo, type Shape } from '../shapes.ts';

export type SpotView = 'side' | 'end' | 'panel' | 'bench';

/** Something on the canvas that can be touched, with the name the plain-words twin uses for the same thing. */
export interface Spot {
  readonly id: string;
  readonly shape: Shape;
  readonly view: SpotView;
}

/** Metal, or a surface for the lens and the chalk. */
export interface PlaceSpot extends Spot {
  readonly place: Place;
}

/** The spot nearest to a point within a margin, px, or null; earlier spots win ties. */
export function nearest<T extends Spot>(spots: readonly T[], p: Point, margin: number): T | null {
  let best: T | null = null;
  let least = margin;
  for (const spot of spots) {
    const d = distanceTo(spot.shape, p);
    if (d < least || (d === 0 && best === null)) {
      best = spot;
      least = d;
      if (d === 0) break;
    }
  }
  return best;
}
