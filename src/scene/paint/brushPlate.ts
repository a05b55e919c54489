import { BRASS, COPPER } from '../materials.ts';
import type { PlateGeometry } from '../partShape.ts';
import { disc, grain, linear, type Pen, radial, roundRect, shadowed } from '../pen.ts';

/** The brush plate from the commutator's side: two holders on insulating sheets, two riveted to the plate itself. */
export function paintBrushPlate(pen: Pen, g: PlateGeometry): void {
  paintDisc(pen, g);
  for (const [place, holder] of Object.entries(g.holders)) {
    pen.save();
    pen.translate(holder.x, holder.y);
    pen.rotate((-holder.deg * Math.PI) / 180);
    if (place.startsWith('plate:insulated')) paintSheet(pen, g.r);
    paintHolder(pen, g.r, place.startsWith('plate:insulated'));
    pen.restore();
  }
}

function paintDisc(pen: Pen, g: PlateGeometry): void {
  const { x, y, r } = g;
  pen.save();
  shadowed(pen, 16, 3, 7, 'rgba(0,0,0,.65)', () => {
    pen.beginPath();
    pen.arc(x, y, r, 0, Math.PI * 2);
    pen.arc(x, y, r * 0.36, 0, Math.PI * 2, true);
    pen.fillStyle = '#8d9a9e';
    pen.fill('evenodd');
  });
  pen.beginPath();
  pen.arc(x, y, r, 0, Math.PI * 2);
  pen.arc(x, y, r * 0.36, 0, Math.PI * 2, true);
  pen.clip('evenodd');
  pen.fillStyle = radial(pen, x - r * 0.4, y - r * 0.5, r * 0.1, r * 1.7, [
    [0, '#dbe3e4'],
    [0.45, '#9dabb0'],
    [1, '#59676d'],
  ]);
  pen.fillRect(x - r, y - r, r * 2, r * 2);
  for (let i = 0; i < 90; i++) {
    pen.strokeStyle = grain(i) > 0.5 ? 'rgba(255,255,255,.10)' : 'rgba(30,44,50,.10)';
    pen.lineWidth = 0.8;
    pen.beginPath();
    pen.arc(x, y, r * (0.36 + 0.64 * grain(i + 9)), grain(i + 40) * 6.28, grain(i + 40) * 6.28 + 1.2);
    pen.stroke();
  }
  pen.restore();
  pen.strokeStyle = 'rgba(20,30,34,.8)';
  pen.lineWidth = 1.4;
  for (const radius of [r, r * 0.36]) {
    pen.beginPath();
    pen.arc(x, y, radius, 0, Math.PI * 2);
    pen.stroke();
  }
  for (const [dx, dy] of [
    [0, 0.86],
    [0, -0.86],
    [0.86, 0],
    [-0.86, 0],
  ] as const) {
    disc(pen, x + dx * r, y + dy * r, r * 0.05, '#12191c');
  }
}

/** Brown fibre under a holder, wider than it, so that it can be seen to stand off the plate. */
function paintSheet(pen: Pen, r: number): void {
  shadowed(pen, 5, 0, 3, 'rgba(0,0,0,.5)', () => {
    roundRect(pen, -r * 0.28, -r * 0.27, r * 0.56, r * 0.54, 5);
    pen.fillStyle = linear(pen, -r * 0.28, -r * 0.27, r * 0.28, r * 0.27, [
      [0, '#a2542f'],
      [0.5, '#7f3d20'],
      [1, '#5b2a15'],
    ]);
    pen.fill();
  });
  for (let i = 0; i < 24; i++) {
    pen.fillStyle = `rgba(255,210,170,${0.05 + 0.07 * grain(i)})`;
    pen.fillRect(-r * 0.27 + grain(i + 4) * r * 0.5, -r * 0.26 + grain(i + 50) * r * 0.5, r * 0.05, 1);
  }
}

/** The brush box with its spring, brush and pigtail; the commutator would lie at the pen's -y. */
function paintHolder(pen: Pen, r: number, insulated: boolean): void {
  for (const side of [-1, 1]) paintRivet(pen, side * r * 0.215, r * 0.19, r * 0.042, insulated);
  shadowed(pen, 5, 0, 4, 'rgba(0,0,0,.6)', () => {
    roundRect(pen, -r * 0.15, -r * 0.2, r * 0.3, r * 0.36, 3);
    pen.fillStyle = linear(pen, -r * 0.15, 0, r * 0.15, 0, [
      [0, '#7c6330'],
      [0.3, BRASS.light],
      [0.7, BRASS.mid],
      [1, '#5b421a'],
    ]);
    pen.fill();
  });
  roundRect(pen, -r * 0.105, -r * 0.33, r * 0.21, r * 0.42, 3);
  pen.fillStyle = linear(pen, -r * 0.1, 0, r * 0.1, 0, [
    [0, '#5a6064'],
    [0.4, '#33383b'],
    [1, '#15181a'],
  ]);
  pen.fill();
  pen.strokeStyle = 'rgba(220,226,228,.35)';
  pen.lineWidth = 1;
  pen.stroke();
  paintSpring(pen, r);
  paintPigtail(pen, r);
}

function paintRivet(pen: Pen, x: number, y: number, r: number, washer: boolean): void {
  if (washer) disc(pen, x, y, r * 1.7, '#d2b98a');
  disc(pen, x, y + 0.8, r * 1.05, 'rgba(10,14,16,.6)');
  disc(
    pen,
    x,
    y,
    r,
    radial(pen, x - r * 0.3, y - r * 0.4, 0, r * 1.1, [
      [0, '#f5f8f8'],
      [0.6, '#a4b0b4'],
      [1, '#59666b'],
    ]),
  );
}

function paintSpring(pen: Pen, r: number): void {
  pen.strokeStyle = '#c9d3d5';
  pen.lineWidth = Math.max(1.4, r * 0.018);
  pen.beginPath();
  for (let i = 0; i <= 60; i++) {
    const t = i / 60;
    const a = t * Math.PI * 5;
    const q = r * 0.085 * (1 - t * 0.75);
    const px = r * 0.06 + Math.cos(a) * q;
    const py = r * 0.13 + Math.sin(a) * q;
    if (i === 0) pen.moveTo(px, py);
    else pen.lineTo(px, py);
  }
  pen.stroke();
}

function paintPigtail(pen: Pen, r: number): void {
  for (const [width, colour] of [
    [r * 0.06, '#341609'],
    [r * 0.045, COPPER.mid],
    [r * 0.016, COPPER.shine],
  ] as const) {
    pen.strokeStyle = colour;
    pen.lineWidth = width;
    pen.lineCap = 'round';
    pen.beginPath();
    pen.moveTo(-r * 0.05, -r * 0.2);
    pen.bezierCurveTo(-r * 0.3, -r * 0.3, -r * 0.3, r * 0.06, -r * 0.2, r * 0.16);
    pen.stroke();
  }
}
