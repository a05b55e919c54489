import { forwardPart } from '../pose.ts';
import type { Desk, Gesture, Pointer } from './desk.ts';
import { DONE } from './panelPress.ts';

/** A press on a part that stands by, on the tab that puts it back, or on the slip between its brushes. */
export function pressPart(desk: Desk, p: Pointer, id: string): Gesture {
  const s = desk.situation();
  const forward = forwardPart(s);
  if (id === 'part:putBack') {
    if (forward) desk.act({ type: 'part.putBack', part: forward }, p.at);
  } else if (id === 'brushes') {
    desk.act({ type: s.seen.brushesApart ? 'brushes.join' : 'brushes.part' }, p.at);
  } else {
    desk.act({ type: 'part.takeUp', part: id === 'part:fieldFrame' ? 'fieldFrame' : 'brushPlate' }, p.at);
  }
  return DONE;
}
