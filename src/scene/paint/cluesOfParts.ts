import { disc, grain, linear, type Pen, radial, roundRect } from '../pen.ts';
import { conductor } from './subjects.ts';

export function brightSolder(pen: Pen, r: number): void {
  roundRect(pen, -r * 0.62, -r * 0.2, r * 1.26, r * 0.4, r * 0.19);
  pen.fillStyle = linear(pen, 0, -r * 0.2, 0, r * 0.2, [
    [0, '#ffffff'],
    [0.3, '#f4fbfc'],
    [0.55, '#b9c8cc'],
    [1, '#8d9a9e'],
  ]);
  pen.fill();
  pen.fillStyle = 'rgba(255,255,255,.95)';
  roundRect(pen, -r * 0.42, -r * 0.135, r * 0.6, r * 0.06, r * 0.03);
  pen.fill();
}

/** The slit stands empty, the solder lies in drops round about. */
export function solderThrown(pen: Pen, r: number): void {
  roundRect(pen, -r * 0.56, -r * 0.19, r * 1.18, r * 0.38, r * 0.05);
  pen.fillStyle = '#130a06';
  pen.fill();
  conductor(pen, -r, r * 0.3, r * 0.03, r * 0.16);
  for (let i = 0; i < 26; i++) {
    const angle = grain(i + 3) * Math.PI * 2;
    const away = r * (0.3 + 0.6 * grain(i + 40));
    const size = r * (0.022 + 0.05 * grain(i + 80));
    const x = Math.cos(angle) * away;
    const y = Math.sin(angle) * away;
    disc(pen, x + size * 0.3, y + size * 0.4, size, 'rgba(0,0,0,.45)');
    disc(
      pen,
      x,
      y,
      size,
      radial(pen, x - size * 0.3, y - size * 0.4, 0, size, [
        [0, '#ffffff'],
        [0.5, '#c3cdd0'],
        [1, '#707b7f'],
      ]),
    );
  }
}

export function burntBarEdge(pen: Pen, r: number): void {
  const y = r * 0.31;
  pen.fillStyle = linear(pen, 0, y - r * 0.3, 0, y + r * 0.06, [
    [0, 'rgba(40,60,110,0)'],
    [0.4, 'rgba(58,66,110,.5)'],
    [0.7, 'rgba(60,30,40,.75)'],
    [1, 'rgba(10,8,8,.96)'],
  ]);
  pen.fillRect(-r, y - r * 0.3, r * 2, r * 0.37);
  for (let i = 0; i < 40; i++) {
    disc(
      pen,
      -r + grain(i) * r * 2,
      y - r * 0.1 * grain(i + 9),
      r * (0.015 + 0.045 * grain(i + 20)),
      '#0b0706',
    );
  }
}

export function bridge(pen: Pen, r: number, carbon: boolean): void {
  const y = r * 0.36;
  pen.beginPath();
  pen.moveTo(-r * 0.36, y - r * 0.16);
  for (let i = 0; i <= 12; i++)
    pen.lineTo(-r * 0.36 + (i / 12) * r * 0.8, y - r * (0.1 + 0.1 * grain(i + 2)));
  for (let i = 12; i >= 0; i--)
    pen.lineTo(-r * 0.36 + (i / 12) * r * 0.8, y + r * (0.1 + 0.1 * grain(i + 31)));
  pen.closePath();
  pen.fillStyle = carbon
    ? '#0c0c0d'
    : linear(pen, 0, y - r * 0.2, 0, y + r * 0.2, [
        [0, '#ffe0b4'],
        [0.5, '#e39a5c'],
        [1, '#a25e2c'],
      ]);
  pen.fill();
  for (let i = 0; i < (carbon ? 70 : 16); i++) {
    const x = -r * 0.5 + grain(i + 11) * r * 1.1;
    const at = y - r * 0.26 + grain(i + 77) * r * 0.52;
    disc(pen, x, at, r * 0.02 * (0.5 + grain(i)), carbon ? 'rgba(18,18,20,.85)' : 'rgba(255,225,180,.85)');
  }
}

export function charredInsulation(pen: Pen, r: number): void {
  pen.fillStyle = radial(pen, -r * 0.2, 0, r * 0.1, r * 0.9, [
    [0, 'rgba(8,6,5,.96)'],
    [0.6, 'rgba(20,12,8,.85)'],
    [1, 'rgba(40,22,12,0)'],
  ]);
  pen.fillRect(-r, -r, r * 2, r * 2);
  pen.strokeStyle = 'rgba(150,96,52,.85)';
  pen.lineWidth = 1.6;
  for (let i = 0; i < 9; i++) {
    let x = -r * 0.7 + grain(i) * r * 1.1;
    let y = -r * 0.6 + grain(i + 30) * r * 1.2;
    pen.beginPath();
    pen.moveTo(x, y);
    for (let k = 0; k < 4; k++) {
      x += r * (grain(i * 4 + k) - 0.4) * 0.3;
      y += r * (grain(i * 4 + k + 50) - 0.5) * 0.34;
      pen.lineTo(x, y);
    }
    pen.stroke();
  }
}

export function rubbedCore(pen: Pen, r: number): void {
  pen.fillStyle = linear(pen, 0, -r * 0.55, 0, r * 0.7, [
    [0, 'rgba(255,255,255,0)'],
    [0.3, 'rgba(252,255,255,.85)'],
    [0.7, 'rgba(246,252,252,.8)'],
    [1, 'rgba(255,255,255,0)'],
  ]);
  pen.fillRect(-r, -r * 0.55, r * 2, r * 1.25);
  for (let i = 0; i < 26; i++) {
    pen.strokeStyle = 'rgba(60,72,78,.55)';
    pen.lineWidth = 0.8 + grain(i);
    const x = -r + grain(i + 8) * r * 2;
    pen.beginPath();
    pen.moveTo(x, -r * 0.5 + grain(i) * r * 0.3);
    pen.lineTo(x + r * 0.06, r * 0.2 + grain(i + 4) * r * 0.4);
    pen.stroke();
  }
}

export function dirt(pen: Pen, r: number): void {
  pen.fillStyle = 'rgba(70,66,58,.42)';
  pen.fillRect(-r, -r, r * 2, r * 2);
  for (let i = 0; i < 240; i++) {
    const x = -r + grain(i) * r * 2;
    const y = -r + grain(i + 300) * r * 2;
    disc(
      pen,
      x,
      y,
      r * (0.008 + 0.026 * grain(i + 600)),
      grain(i + 900) > 0.5 ? 'rgba(36,34,30,.8)' : 'rgba(150,142,126,.6)',
    );
  }
}

export function wornSurface(pen: Pen, r: number): void {
  for (const [x, w] of [
    [-0.62, 0.2],
    [-0.2, 0.34],
    [0.36, 0.24],
  ] as const) {
    pen.fillStyle = linear(pen, x * r, 0, (x + w) * r, 0, [
      [0, 'rgba(40,16,4,.8)'],
      [0.3, 'rgba(90,44,18,.45)'],
      [0.8, 'rgba(255,222,180,.5)'],
      [1, 'rgba(255,236,210,.8)'],
    ]);
    pen.fillRect(x * r, -r, w * r, r * 2);
  }
}

export function looseRivet(pen: Pen, r: number): void {
  disc(pen, r * 0.04, r * 0.06, r * 0.5, '#0a0d0e');
  disc(
    pen,
    0,
    0,
    r * 0.4,
    radial(pen, -r * 0.14, -r * 0.16, 0, r * 0.44, [
      [0, '#f1f5f5'],
      [0.6, '#99a6aa'],
      [1, '#4b565a'],
    ]),
  );
}

export function brokenPigtail(pen: Pen, r: number): void {
  for (const side of [-1, 1]) {
    for (let i = 0; i < 16; i++) {
      const y = (i - 8) * r * 0.035;
      pen.strokeStyle = i % 2 ? '#d98e52' : '#8c4c22';
      pen.lineWidth = 2;
      pen.beginPath();
      pen.moveTo(side * r, y);
      pen.quadraticCurveTo(
        side * r * 0.5,
        y,
        side * r * (0.12 + 0.14 * grain(i)),
        y * 3 * (0.6 + grain(i + 5)),
      );
      pen.stroke();
    }
  }
}
