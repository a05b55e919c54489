import { BRASS } from '../materials.ts';
import type { Pen } from '../pen.ts';

const STROKES = [
  [4.5, '#1a1206'],
  [3, BRASS.mid],
  [1, BRASS.light],
] as const;
/** Radius of the bend a long tool lies in, px. */
const BEND = 5;

/** A brass wire that hangs straight down at x, bent up at its foot where something lies in it. */
export function paintHook(pen: Pen, x: number, from: number, to: number, bent = false): void {
  pen.lineCap = 'round';
  for (const [width, colour] of STROKES) {
    pen.strokeStyle = colour;
    pen.lineWidth = width;
    pen.beginPath();
    pen.moveTo(x, from);
    pen.lineTo(x, to);
    if (bent) pen.arc(x + BEND, to, BEND, Math.PI, 0, true);
    pen.stroke();
  }
}
