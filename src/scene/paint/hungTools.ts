import type { HungTool, Rect } from '../layout.ts';
import { STEEL } from '../materials.ts';
import { disc, linear, type Pen, roundRect, shadowed } from '../pen.ts';
import { hangingRoom, LOW_TILE, railBar, tileRoom } from '../railShape.ts';
import { paintHook } from './hook.ts';
import { HALF, paintTile, paintToolName } from './tools.ts';

const NAMES: Readonly<Record<HungTool, string>> = {
  tester: 'tester',
  drop: 'mV drop',
  gauges: 'gauges',
  remedies: 'brush, iron',
};

/** Narrower than this a place on the rail has no room for a name, px. */
const NAMED = 36;

/** A tool on its hook with its name under it, as large as its place on the rail. */
export function paintHungTool(pen: Pen, box: Rect, tool: HungTool, tile: boolean): void {
  // Its edge is painted whole.
  if (tile) paintTile(pen, { x: box.x + 0.5, y: box.y + 0.5, w: box.w - 1, h: box.h - 1 });
  const name = box.w < HALF && tool === 'remedies' ? 'brush' : NAMES[tool];
  // A low tile over the whole breadth has room for the name beside the tool.
  const beside = tile && box.h < LOW_TILE && box.w >= HALF;
  if (beside) paintToolName(pen, { ...box, x: box.x + 24, w: box.w - 24, h: box.h / 2 + 8 }, name, false);
  else if (box.w >= NAMED) paintToolName(pen, box, name, tile);
  const whole = { top: box.y + 3, foot: box.y + box.h - 3 };
  const { top, foot } = beside ? whole : tile ? tileRoom(box) : hangingRoom(box);
  const size = Math.min(box.w * 0.62, foot - top, 40);
  pen.save();
  pen.translate(
    beside ? box.x + 18 : box.x + box.w / 2,
    top + size * 0.6 + (tile ? (foot - top - size) / 2 : 0),
  );
  if (!tile) paintHook(pen, 0, railBar(box).y - top - size * 0.6, -size * 0.3);
  shadowed(pen, 5, 1, 3, 'rgba(0,0,0,.55)', () => PAINT[tool](pen, size));
  pen.restore();
}

const PAINT: Readonly<Record<HungTool, (pen: Pen, size: number) => void>> = {
  tester: (pen, size) => paintCase(pen, size, '#7a2f26'),
  drop: (pen, size) => paintCase(pen, size, '#2f5a6b'),
  gauges: paintCallipers,
  remedies: paintBrushAndIron,
};

/** A small instrument in a case with a strap, its colour that of its leads. */
function paintCase(pen: Pen, size: number, colour: string): void {
  const h = size * 0.78;
  pen.strokeStyle = colour;
  pen.lineWidth = 2.5;
  pen.beginPath();
  pen.arc(0, -h / 2, size * 0.24, Math.PI, 0);
  pen.stroke();
  roundRect(pen, -size / 2, -h / 2, size, h, 4);
  pen.fillStyle = linear(pen, 0, -h / 2, 0, h / 2, [
    [0, '#3b555b'],
    [1, '#16272c'],
  ]);
  pen.fill();
  roundRect(pen, -size * 0.38, -h * 0.36, size * 0.76, h * 0.44, 2);
  pen.fillStyle = '#f2ead7';
  pen.fill();
  disc(pen, size * 0.28, h * 0.3, size * 0.1, colour);
}

function paintCallipers(pen: Pen, size: number): void {
  pen.fillStyle = STEEL.light;
  pen.fillRect(-size / 2, -size * 0.32, size, size * 0.15);
  pen.fillRect(-size * 0.48, -size * 0.32, size * 0.12, size * 0.66);
  pen.fillStyle = STEEL.mid;
  pen.fillRect(size * 0.02, -size * 0.38, size * 0.3, size * 0.27);
  pen.fillRect(size * 0.02, -size * 0.3, size * 0.12, size * 0.64);
}

function paintBrushAndIron(pen: Pen, size: number): void {
  pen.rotate(0.5);
  pen.fillStyle = '#9b6c3f';
  pen.fillRect(-size * 0.07, -size * 0.55, size * 0.14, size * 0.6);
  pen.fillStyle = '#d8c9a0';
  pen.fillRect(-size * 0.15, size * 0.05, size * 0.3, size * 0.4);
  pen.rotate(-1);
  pen.fillStyle = '#5a3a22';
  pen.fillRect(-size * 0.09, -size * 0.55, size * 0.18, size * 0.45);
  pen.fillStyle = STEEL.mid;
  pen.fillRect(-size * 0.05, -size * 0.1, size * 0.1, size * 0.34);
  pen.fillStyle = '#b4662f';
  pen.fillRect(-size * 0.1, size * 0.22, size * 0.2, size * 0.26);
}
