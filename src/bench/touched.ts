import { isArmatureRemedy } from '../engine/parts/remedies.ts';
import type { BrushIndex, PartKind } from './action.ts';
import type { BenchEvent } from './happening.ts';
import { partOf } from './places.ts';

/** The part a brush belongs to: field brushes 1 and 2, then those of the plate's earthed holders. */
export function partOfBrush(brush: BrushIndex): PartKind {
  return brush < 2 ? 'fieldFrame' : 'brushPlate';
}

/** The part an act lays bare hands on, if only for a moment, or null. */
export function handledPart(event: BenchEvent): PartKind | null {
  switch (event.type) {
    case 'armature.turn':
    case 'armature.lift':
    case 'armature.hold':
    case 'armature.place':
      return 'armature';
    case 'part.takeUp':
    case 'part.putBack':
      return event.part;
    case 'brushes.part':
    case 'brushes.join':
      return 'fieldFrame';
    case 'gauge.read':
      return event.brush === undefined ? 'armature' : partOfBrush(event.brush);
    case 'remedy.do':
      return isArmatureRemedy(event.remedy) ? 'armature' : 'brushPlate';
    default:
      return null;
  }
}

/** The part an act touches with a hand, a lead or a clamp, or null. */
export function touchedPart(event: BenchEvent): PartKind | null {
  if (event.type === 'lead.touch') return partOf(event.place);
  if (event.type === 'drop.feed') return event.at === null ? null : partOf(event.at[0]);
  return handledPart(event);
}
