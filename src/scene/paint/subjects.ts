import type { Place } from '../../bench/places.ts';
import { ENAMEL, MICA } from '../materials.ts';
import { disc, grain, linear, type Pen, radial, roundRect } from '../pen.ts';

/** A place under the lens, as a sound one looks; the pen's origin is the middle of the glass, r its radius. */
export function paintSubject(pen: Pen, r: number, place: Place): void {
  if (place.startsWith('riser:')) risers(pen, r);
  else if (place.startsWith('bar:')) bars(pen, r);
  else if (place === 'core') core(pen, r);
  else if (place.startsWith('field:') && place !== 'field:case') fieldCoil(pen, r);
  else if (place.startsWith('plate:') && place !== 'plate:metal') brushHolder(pen, r);
  else if (place.startsWith('handle:')) leadHandle(pen, r, place.startsWith('handle:lamp'));
  else if (place === 'lampBulb') bulb(pen, r);
  else steel(pen, r);
}

function bars(pen: Pen, r: number): void {
  pen.fillStyle = MICA;
  pen.fillRect(-r, -r, r * 2, r * 2);
  const pitch = r * 0.72;
  for (let i = -2; i <= 2; i++) copperBar(pen, r, i * pitch, pitch * 0.88);
}

function copperBar(pen: Pen, r: number, y: number, h: number): void {
  pen.fillStyle = linear(pen, 0, y - h / 2, 0, y + h / 2, [
    [0, '#f6c692'],
    [0.1, '#dd9558'],
    [0.6, '#c67a41'],
    [1, '#7d431f'],
  ]);
  pen.fillRect(-r, y - h / 2, r * 2, h);
  for (let i = 0; i < 46; i++) {
    pen.fillStyle = grain(i) > 0.5 ? 'rgba(255,232,200,.14)' : 'rgba(60,24,8,.14)';
    pen.fillRect(-r + (i / 46) * r * 2, y - h / 2, 1.3, h);
  }
}

function risers(pen: Pen, r: number): void {
  pen.fillStyle = MICA;
  pen.fillRect(-r, -r, r * 2, r * 2);
  const pitch = r * 0.8;
  for (let i = -2; i <= 2; i++) {
    const y = i * pitch;
    copperBar(pen, r, y, pitch * 0.86);
    pen.fillStyle = '#3a1d0e';
    pen.fillRect(-r, y - pitch * 0.22, r * 1.62, pitch * 0.44);
    conductor(pen, -r, r * 0.1, y, pitch * 0.3);
    solder(pen, r, y, pitch);
  }
}

export function conductor(pen: Pen, from: number, to: number, y: number, h: number): void {
  pen.fillStyle = linear(pen, 0, y - h / 2, 0, y + h / 2, [
    [0, ENAMEL.light],
    [0.5, ENAMEL.mid],
    [1, ENAMEL.dark],
  ]);
  pen.fillRect(from, y - h / 2, to - from, h);
}

function solder(pen: Pen, r: number, y: number, pitch: number): void {
  roundRect(pen, -r * 0.55, y - pitch * 0.2, r * 1.14, pitch * 0.4, pitch * 0.16);
  pen.fillStyle = linear(pen, 0, y - pitch * 0.2, 0, y + pitch * 0.2, [
    [0, '#e3e9ea'],
    [0.4, '#b4bdc0'],
    [1, '#6f797d'],
  ]);
  pen.fill();
}

function core(pen: Pen, r: number): void {
  pen.fillStyle = '#9aa6a9';
  pen.fillRect(-r, -r, r * 2, r * 2);
  for (let x = -r, i = 0; x < r; x += 5, i++) {
    pen.fillStyle = grain(i) > 0.5 ? 'rgba(240,248,248,.35)' : 'rgba(30,42,48,.3)';
    pen.fillRect(x, -r, 1.8, r * 2);
  }
  pen.fillStyle = '#0d1316';
  pen.fillRect(-r, -r * 0.16, r * 2, r * 0.3);
  pen.fillStyle = '#8a5c33';
  pen.fillRect(-r, -r * 0.08, r * 2, r * 0.16);
}

function steel(pen: Pen, r: number): void {
  pen.fillStyle = linear(pen, 0, -r, 0, r, [
    [0, '#7c878b'],
    [0.35, '#eef3f3'],
    [1, '#5c676b'],
  ]);
  pen.fillRect(-r, -r, r * 2, r * 2);
  for (let x = -r, i = 0; x < r; x += 3, i++) {
    pen.fillStyle = `rgba(20,30,34,${0.05 + 0.12 * grain(i)})`;
    pen.fillRect(x, -r, 1, r * 2);
  }
}

/** Field coil under its tape, the strap to its brush below it. */
function fieldCoil(pen: Pen, r: number): void {
  pen.fillStyle = '#141d21';
  pen.fillRect(-r, -r, r * 2, r * 2);
  for (let i = 0; i < 4; i++) copperBar(pen, r, -r * 0.62 + i * r * 0.3, r * 0.27);
  for (const x of [-0.62, -0.06, 0.5]) {
    roundRect(pen, x * r - r * 0.13, -r * 0.86, r * 0.26, r * 1.3, r * 0.05);
    pen.fillStyle = linear(pen, x * r - r * 0.13, 0, x * r + r * 0.13, 0, [
      [0, '#9c8a61'],
      [0.4, '#e2d4ad'],
      [1, '#7d6c45'],
    ]);
    pen.fill();
  }
  braidAcross(pen, r, r * 0.72);
}

function braidAcross(pen: Pen, r: number, y: number): void {
  for (let i = 0; i < 22; i++) {
    const x = -r + i * r * 0.1;
    pen.strokeStyle = i % 2 ? '#d98e52' : '#97552a';
    pen.lineWidth = r * 0.06;
    pen.beginPath();
    pen.moveTo(x, y - r * 0.14);
    pen.lineTo(x + r * 0.1, y + r * 0.14);
    pen.stroke();
  }
}

/** Brush box on its sheet of fibre, rivet and pigtail. */
function brushHolder(pen: Pen, r: number): void {
  steel(pen, r);
  pen.fillStyle = '#8a4526';
  pen.fillRect(-r * 0.9, -r * 0.2, r * 1.8, r * 0.9);
  roundRect(pen, -r * 0.5, -r * 0.75, r, r * 1.15, r * 0.06);
  pen.fillStyle = linear(pen, -r * 0.5, 0, r * 0.5, 0, [
    [0, '#7c6330'],
    [0.3, '#e9cd84'],
    [1, '#5b421a'],
  ]);
  pen.fill();
  roundRect(pen, -r * 0.34, -r, r * 0.68, r * 0.9, r * 0.04);
  pen.fillStyle = '#2b3032';
  pen.fill();
  for (const x of [-0.7, 0.7]) {
    disc(pen, x * r, r * 0.48, r * 0.16, '#d2b98a');
    disc(
      pen,
      x * r,
      r * 0.48,
      r * 0.11,
      radial(pen, x * r - r * 0.04, r * 0.44, 0, r * 0.12, [
        [0, '#f1f5f5'],
        [1, '#67747a'],
      ]),
    );
  }
  braidAcross(pen, r, r * 0.86);
}

function leadHandle(pen: Pen, r: number, guarded: boolean): void {
  pen.fillStyle = '#0f1b1f';
  pen.fillRect(-r, -r, r * 2, r * 2);
  const h = r * 1.05;
  pen.fillStyle = linear(
    pen,
    0,
    -h / 2,
    0,
    h / 2,
    guarded
      ? [
          [0, '#5a1513'],
          [0.25, '#d96c58'],
          [0.5, '#8d2b22'],
          [1, '#35100e'],
        ]
      : [
          [0, '#16242a'],
          [0.25, '#87a9b6'],
          [0.5, '#2d434c'],
          [1, '#0e171a'],
        ],
  );
  pen.fillRect(-r, -h / 2, r * 1.5, h);
  pen.fillStyle = guarded ? '#a8382f' : '#4f7f93';
  pen.fillRect(r * 0.5, -r * 0.16, r * 0.6, r * 0.32);
  for (let i = 0; i < 4; i++) {
    pen.fillStyle = 'rgba(0,0,0,.35)';
    pen.fillRect(-r * 0.8 + i * r * 0.26, -h / 2, r * 0.08, h);
  }
}

function bulb(pen: Pen, r: number): void {
  pen.fillStyle = '#0d171a';
  pen.fillRect(-r, -r, r * 2, r * 2);
  disc(
    pen,
    0,
    0,
    r * 0.92,
    radial(pen, -r * 0.3, -r * 0.4, r * 0.1, r, [
      [0, 'rgba(220,240,244,.4)'],
      [1, 'rgba(120,160,168,.16)'],
    ]),
  );
  pen.strokeStyle = '#8d979a';
  pen.lineWidth = r * 0.04;
  for (const side of [-1, 1]) {
    pen.beginPath();
    pen.moveTo(side * r * 0.16, r);
    pen.lineTo(side * r * 0.5, 0);
    pen.stroke();
  }
  filament(pen, r, -0.5, 0.5);
}

/** A coiled filament between two shares of the span. */
export function filament(pen: Pen, r: number, from: number, to: number): void {
  pen.strokeStyle = '#cfc6b8';
  pen.lineWidth = r * 0.035;
  pen.beginPath();
  for (let i = 0; i <= 60; i++) {
    const x = r * (from + ((to - from) * i) / 60);
    const y = Math.sin(i * 1.05) * r * 0.06 - (1 - ((2 * x) / r) ** 2) * r * 0.12;
    if (i === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  }
  pen.stroke();
}
