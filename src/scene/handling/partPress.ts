import { inside } from '../layout.ts';
import { forwardPart } from '../pose.ts';
import { distanceTo } from '../shapes.ts';
import type { Desk, Gesture, Pointer } from './desk.ts';
import { DONE } from './panelPress.ts';
import { partSpots } from './targets.ts';

/** A press on a part that stands by, on the tab that puts it back, or on the slip between its brushes. */
export function onPart(desk: Desk, p: Pointer): Gesture | null {
  const s = desk.situation();
  const spot = partSpots(s).find((each) => distanceTo(each.shape, p.at) <= (p.kind === 'touch' ? 8 : 3));
  const forward = forwardPart(s);
  if (spot?.id === 'part:putBack' && forward) desk.act({ type: 'part.putBack', part: forward }, p.at);
  else if (spot?.id === 'brushes') {
    desk.act({ type: s.seen.brushesApart ? 'brushes.join' : 'brushes.part' }, p.at);
  } else if (spot) {
    const part = spot.id === 'part:fieldFrame' ? 'fieldFrame' : 'brushPlate';
    desk.act({ type: 'part.takeUp', part }, p.at);
  }
  // What lies under the board is covered by it.
  return spot || (forward && inside(s.layout.board, p.at)) ? DONE : null;
}
