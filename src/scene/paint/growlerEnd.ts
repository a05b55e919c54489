import { COIL, RIVET_RADIUS, RIVETS, restHeight, WHOLE } from '../growlerShape.ts';
import { COPPER, TAPE } from '../materials.ts';
import { disc, grain, linear, type Pen, polygon, radial, roundRect, shadowed } from '../pen.ts';
import type { EndGeometry } from '../project.ts';

/** The growler seen along the shaft, as it stands in the end view. */
export function paintGrowlerEnd(pen: Pen, g: EndGeometry, outerRadiusM: number): void {
  const s = g.pxPerM / 1000;
  const apexY = g.y + restHeight(outerRadiusM) * s;
  const at = ([x, y]: readonly [number, number]): [number, number] => [g.x + x * s, apexY - y * s];
  shadowed(pen, 18 * s, 0, 6 * s, 'rgba(0,0,0,.6)', () => {
    polygon(pen, WHOLE.map(at));
    pen.fillStyle = '#41525b';
    pen.fill();
  });
  paintIron(pen, g, s, apexY, at);
  paintCoil(pen, g.x, apexY, s);
  paintRivets(pen, g.x, apexY, s);
}

function paintIron(
  pen: Pen,
  g: EndGeometry,
  s: number,
  apexY: number,
  at: (p: readonly [number, number]) => [number, number],
): void {
  pen.save();
  polygon(pen, WHOLE.map(at));
  pen.fillStyle = linear(pen, g.x - 46 * s, apexY - 40 * s, g.x + 46 * s, apexY + 50 * s, [
    [0, '#8497a0'],
    [0.4, '#5d707a'],
    [0.75, '#42535d'],
    [1, '#2a3942'],
  ]);
  pen.fill();
  pen.clip();
  for (let i = 0; i < 60; i++) {
    pen.fillStyle = `rgba(225,238,240,${0.02 + 0.035 * grain(i)})`;
    pen.fillRect(g.x - 46 * s, apexY - 36 * s + i * 1.5 * s, 92 * s, 0.5 * s);
  }
  pen.restore();
  pen.strokeStyle = 'rgba(222,236,238,.55)';
  pen.lineWidth = Math.max(1, 0.4 * s);
  polygon(pen, WHOLE.map(at));
  pen.stroke();
}

/** Round wire in its window, with the tape that binds it. */
function paintCoil(pen: Pen, x: number, apexY: number, s: number): void {
  const w = (COIL.right - COIL.left) * s;
  const h = (COIL.top - COIL.bottom) * s;
  const left = x + COIL.left * s;
  const top = apexY - COIL.top * s;
  roundRect(pen, left, top, w, h, 5 * s);
  pen.fillStyle = TAPE.dark;
  pen.fill();
  pen.save();
  roundRect(pen, left + s, top + s, w - 2 * s, h - 2 * s, 4.5 * s);
  pen.clip();
  pen.fillStyle = '#2b150b';
  pen.fillRect(left, top, w, h);
  const d = 3.1 * s;
  for (let row = 0; row * d * 0.87 < h; row++) {
    for (let col = -1; col * d < w + d; col++) {
      const cx = left + s + (col + (row % 2) / 2) * d + d / 2;
      const cy = top + s + row * d * 0.87 + d / 2;
      disc(
        pen,
        cx,
        cy,
        d * 0.46,
        radial(pen, cx - d * 0.12, cy - d * 0.14, 0, d * 0.5, [
          [0, COPPER.shine],
          [0.45, COPPER.mid],
          [1, COPPER.dark],
        ]),
      );
    }
  }
  pen.restore();
  for (const side of [-1, 1]) {
    roundRect(pen, x + side * 13 * s - 2.6 * s, top - 0.6 * s, 5.2 * s, h + 1.2 * s, 1.5 * s);
    pen.fillStyle = linear(pen, 0, top, 0, top + h, [
      [0, TAPE.light],
      [0.5, TAPE.mid],
      [1, TAPE.dark],
    ]);
    pen.fill();
  }
}

function paintRivets(pen: Pen, x: number, apexY: number, s: number): void {
  for (const [rx, ry] of RIVETS) {
    const cx = x + rx * s;
    const cy = apexY - ry * s;
    disc(pen, cx, cy + 0.4 * s, RIVET_RADIUS * s, 'rgba(8,14,18,.6)');
    disc(
      pen,
      cx,
      cy,
      2.2 * s,
      radial(pen, cx - 0.8 * s, cy - 0.8 * s, 0, 2.4 * s, [
        [0, '#dbe5e7'],
        [0.6, '#80929b'],
        [1, '#4a5a63'],
      ]),
    );
  }
}
