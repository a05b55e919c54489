import { BRASS, GUARDED_LEAD, NEEDLE_LEAD } from '../materials.ts';
import { linear, type Pen, polygon, roundRect, shadowed } from '../pen.ts';
import type { LeadBuild } from '../pose.ts';

function steel(pen: Pen, half: number) {
  return linear(pen, 0, -half, 0, half, [
    [0, '#6d797d'],
    [0.35, '#f4f8f8'],
    [0.6, '#aab6b9'],
    [1, '#4b565a'],
  ]);
}

/** Round handle of a colour, lit from above. */
function handle(pen: Pen, x: number, length: number, width: number, body: string, light: string): void {
  shadowed(pen, 7, 2, 5, 'rgba(0,0,0,.55)', () => {
    roundRect(pen, x, -width / 2, length, width, width * 0.36);
    pen.fillStyle = body;
    pen.fill();
  });
  roundRect(pen, x, -width / 2, length, width, width * 0.36);
  pen.fillStyle = linear(pen, 0, -width / 2, 0, width / 2, [
    [0, 'rgba(255,255,255,.10)'],
    [0.26, light],
    [0.45, 'rgba(255,255,255,.04)'],
    [1, 'rgba(0,0,0,.55)'],
  ]);
  pen.fill();
}

/** Short plain needle with a thin handle: pen's origin at the tip, +x along the lead. */
export function paintAmmeterLead(pen: Pen, b: LeadBuild): void {
  const start = b.bare + b.neck;
  polygon(pen, [
    [0, 0],
    [b.bare * 0.5, -1.9],
    [start + 2, -2.3],
    [start + 2, 2.3],
    [b.bare * 0.5, 1.9],
  ]);
  pen.fillStyle = steel(pen, 2.3);
  pen.fill();
  roundRect(pen, b.bare, -4, b.neck + 4, 8, 2);
  pen.fillStyle = linear(pen, 0, -4, 0, 4, [
    [0, BRASS.dark],
    [0.35, BRASS.light],
    [1, BRASS.dark],
  ]);
  pen.fill();
  handle(pen, start, b.handle, b.width, NEEDLE_LEAD.body, 'rgba(190,225,238,.5)');
  pen.fillStyle = NEEDLE_LEAD.trim;
  for (const x of [start + 7, start + 13, start + 19]) pen.fillRect(x, -b.width / 2 + 0.5, 2.2, b.width - 1);
  roundRect(pen, start + b.handle - 6, -3.5, 12, 7, 3);
  pen.fillStyle = NEEDLE_LEAD.cable;
  pen.fill();
}

/** Heavy handle with a finger guard and a sleeve that leaves only a few millimetres of tip bare. */
export function paintLampLead(pen: Pen, b: LeadBuild): void {
  const start = b.bare + b.neck;
  polygon(pen, [
    [0, 0],
    [b.bare * 0.7, -2.6],
    [b.bare + 3, -2.8],
    [b.bare + 3, 2.8],
    [b.bare * 0.7, 2.6],
  ]);
  pen.fillStyle = steel(pen, 2.8);
  pen.fill();
  roundRect(pen, b.bare, -5.5, b.neck + 4, 11, 4);
  pen.fillStyle = linear(pen, 0, -5.5, 0, 5.5, [
    [0, '#57504a'],
    [0.3, '#8d857c'],
    [1, '#241f1b'],
  ]);
  pen.fill();
  handle(pen, start, b.handle, b.width, GUARDED_LEAD.body, 'rgba(255,196,176,.5)');
  shadowed(pen, 5, 1, 3, 'rgba(0,0,0,.5)', () => {
    roundRect(pen, start - 4, -b.guard, 9, b.guard * 2, 4);
    pen.fillStyle = linear(pen, 0, -b.guard, 0, b.guard, [
      [0, '#a8382f'],
      [0.3, '#e27a66'],
      [1, '#4e1310'],
    ]);
    pen.fill();
  });
  for (let i = 0; i < 6; i++) {
    pen.fillStyle = i % 2 ? 'rgba(255,210,190,.16)' : 'rgba(30,0,0,.42)';
    pen.fillRect(start + 26 + i * 8, -b.width / 2 + 2, 3.6, b.width - 4);
  }
  pen.fillStyle = GUARDED_LEAD.trim;
  pen.fillRect(start + 14, -b.width / 2 + 0.5, 5, b.width - 1);
  roundRect(pen, start + b.handle - 8, -5.5, 18, 11, 5);
  pen.fillStyle = '#3c0f0d';
  pen.fill();
}

export function paintCable(pen: Pen, w: number, h: number, lamp: boolean): void {
  const c = lamp ? GUARDED_LEAD : NEEDLE_LEAD;
  pen.fillStyle = linear(pen, 0, 0, 0, h, [
    [0, 'rgba(0,0,0,0)'],
    [0.12, '#0c1416'],
    [0.3, c.cableLight],
    [0.55, c.cable],
    [0.88, '#10181a'],
    [1, 'rgba(0,0,0,0)'],
  ]);
  pen.fillRect(0, 0, w, h);
}

/** The stand's jaw, closed on a handle. */
export function paintClamp(pen: Pen, size: number): void {
  pen.translate(size / 2, size / 2);
  shadowed(pen, 4, 0, 2, 'rgba(0,0,0,.6)', () => {
    roundRect(pen, -8, -13, 16, 26, 5);
    pen.fillStyle = linear(pen, 0, -13, 0, 13, [
      [0, '#c6d3d5'],
      [0.5, '#6d7d83'],
      [1, '#39474c'],
    ]);
    pen.fill();
  });
  roundRect(pen, -4, -15, 8, 7, 3);
  pen.fillStyle = BRASS.light;
  pen.fill();
}
