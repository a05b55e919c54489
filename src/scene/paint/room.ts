import type { Layout, Rect } from '../layout.ts';
import { APRON, BENCH, BRASS, font, WALL } from '../materials.ts';
import { disc, grain, linear, type Pen, polygon, radial, roundRect, shadowed } from '../pen.ts';
import { railBar } from '../railShape.ts';
import { paintEndFrame } from './endView.ts';

/** Everything that never changes: wall, window at dusk, bench top, mat, the frame of the end view, the panel's housing. */
export function paintRoom(pen: Pen, l: Layout): void {
  paintBench(pen, l);
  if (l.mode !== 'narrow') {
    paintWall(pen, l);
    paintRail(pen, l.rail);
  }
  paintMat(pen, l);
  paintEndFrame(pen, l);
  paintApron(pen, l.panel.frame);
}

function paintBench(pen: Pen, l: Layout): void {
  pen.fillStyle = linear(pen, 0, l.benchTop, 0, l.height, [
    [0, BENCH.far],
    [1, BENCH.near],
  ]);
  pen.fillRect(0, 0, l.width, l.height);
  const x = l.side ? (l.side.x.coreRight + l.side.x.coreLeft) / 2 : l.end.x;
  const y = l.side ? l.side.axisY - l.side.r.core * 0.3 : l.end.y;
  pen.fillStyle = radial(pen, x, y, 20, l.width * 0.62, [
    [0, 'rgba(120,190,172,.34)'],
    [0.35, 'rgba(84,160,150,.18)'],
    [0.75, 'rgba(20,70,74,0)'],
    [1, 'rgba(2,16,20,.5)'],
  ]);
  pen.fillRect(0, 0, l.width, l.height);
  for (let i = 0; i < 900; i++) {
    const px = grain(i) * l.width;
    const py = l.benchTop + grain(i + 1000) * (l.height - l.benchTop);
    pen.fillStyle = grain(i + 2000) > 0.5 ? 'rgba(190,240,226,.045)' : 'rgba(0,12,16,.09)';
    pen.fillRect(px, py, 1 + grain(i + 3000) * 16, 0.9);
  }
}

function paintWall(pen: Pen, l: Layout): void {
  pen.fillStyle = linear(pen, 0, 0, 0, l.benchTop, [
    [0, WALL.top],
    [1, WALL.low],
  ]);
  pen.fillRect(0, 0, l.width, l.benchTop);
  paintWindow(pen, l);
  pen.fillStyle = linear(pen, 0, l.benchTop - 8, 0, l.benchTop + 6, [
    [0, 'rgba(0,8,12,.6)'],
    [0.55, 'rgba(0,8,12,.85)'],
    [0.6, '#2f7370'],
    [1, 'rgba(20,80,80,0)'],
  ]);
  pen.fillRect(0, l.benchTop - 8, l.width, 14);
}

/** A low window with the last of the daylight in it; its sill is above the names of the tools. */
function paintWindow(pen: Pen, l: Layout): void {
  const h = l.rail.y + l.rail.h - 13;
  const x = l.rail.x + l.rail.w * 0.6;
  const w = l.rail.w * 0.4;
  pen.fillStyle = linear(pen, 0, 0, 0, h, [
    [0, '#243a55'],
    [0.45, '#5a4f68'],
    [0.78, '#b7745a'],
    [1, '#e0a35f'],
  ]);
  pen.globalAlpha = 0.62;
  pen.fillRect(x, 0, w, h - 4);
  pen.globalAlpha = 1;
  pen.fillStyle = 'rgba(10,20,26,.85)';
  for (let i = 0; i < 9; i++) {
    const bw = w * (0.05 + 0.06 * grain(i + 5));
    const bh = h * (0.12 + 0.3 * grain(i + 60));
    pen.fillRect(x + (i * w) / 8.6, h - 4 - bh, bw, bh);
  }
  pen.fillStyle = '#0f1d23';
  for (let i = 0; i <= 3; i++) pen.fillRect(x + (i * w) / 3 - 2.5, 0, 5, h - 2);
  pen.fillRect(x - 4, h - 6, w + 8, 6);
  pen.fillStyle = 'rgba(255,220,170,.16)';
  for (let i = 0; i <= 3; i++) pen.fillRect(x + (i * w) / 3 + 1.5, 0, 1, h - 6);
}

function paintRail(pen: Pen, rail: Rect): void {
  const { y } = railBar(rail);
  shadowed(pen, 8, 0, 4, 'rgba(0,0,0,.6)', () => {
    roundRect(pen, rail.x, y, rail.w, 7, 3.5);
    pen.fillStyle = linear(pen, 0, y, 0, y + 7, [
      [0, BRASS.light],
      [0.35, BRASS.mid],
      [1, BRASS.dark],
    ]);
    pen.fill();
  });
  for (const share of [0.015, 0.985]) {
    disc(pen, rail.x + rail.w * share, y + 3.5, 6.5, BRASS.dark);
    disc(pen, rail.x + rail.w * share, y + 2.6, 4.6, BRASS.light);
  }
}

function paintMat(pen: Pen, l: Layout): void {
  const m = l.mat;
  shadowed(pen, 10, 0, 4, 'rgba(0,0,0,.5)', () => {
    roundRect(pen, m.x, m.y, m.w, m.h, 12);
    pen.fillStyle = linear(pen, 0, m.y, 0, m.y + m.h, [
      [0, '#27353a'],
      [1, '#1c282c'],
    ]);
    pen.fill();
  });
  pen.save();
  roundRect(pen, m.x + 2, m.y + 2, m.w - 4, m.h - 4, 10);
  pen.clip();
  pen.strokeStyle = 'rgba(160,190,190,.07)';
  pen.lineWidth = 2;
  for (let y = m.y + 6; y < m.y + m.h; y += 6) {
    pen.beginPath();
    pen.moveTo(m.x, y);
    pen.lineTo(m.x + m.w, y);
    pen.stroke();
  }
  pen.restore();
  roundRect(pen, m.x + 5, m.y + 5, m.w - 10, m.h - 10, 8);
  pen.strokeStyle = 'rgba(190,215,212,.28)';
  pen.setLineDash([5, 5]);
  pen.lineWidth = 1.2;
  pen.stroke();
  pen.setLineDash([]);
}

function paintApron(pen: Pen, f: Rect): void {
  shadowed(pen, 18, 0, -5, 'rgba(0,0,0,.55)', () => {
    pen.fillStyle = APRON.face;
    pen.fillRect(f.x, f.y + 4, f.w, f.h);
  });
  pen.fillStyle = linear(pen, 0, f.y, 0, f.y + f.h, [
    [0, APRON.top],
    [0.12, APRON.face],
    [1, APRON.low],
  ]);
  pen.fillRect(f.x, f.y, f.w, f.h);
  pen.fillStyle = linear(pen, 0, f.y, 0, f.y + 7, [
    [0, '#7c5a34'],
    [0.4, '#5b3f22'],
    [1, '#2b1c0f'],
  ]);
  pen.fillRect(f.x, f.y, f.w, 7);
  pen.fillStyle = 'rgba(255,226,180,.35)';
  pen.fillRect(f.x, f.y, f.w, 1);
  for (let i = 0; i < 220; i++) {
    pen.fillStyle = `rgba(200,230,230,${0.012 + 0.02 * grain(i)})`;
    pen.fillRect(grain(i + 300) * f.w, f.y + 9 + grain(i + 700) * (f.h - 9), 30 * grain(i + 40), 0.8);
  }
}

/** Dusk over a bench that has been stopped, with a barrier tape that says so. */
export function paintVeil(pen: Pen, l: Layout, words: boolean): void {
  pen.fillStyle = 'rgba(3,14,18,.58)';
  pen.fillRect(0, 0, l.width, l.height);
  const h = Math.max(38, l.height * 0.062);
  const y = l.panel.frame.y - h - 26;
  pen.save();
  pen.translate(l.width / 2, y + h / 2);
  pen.rotate(-0.03);
  pen.fillStyle = '#efe6d0';
  pen.fillRect(-l.width, -h / 2, l.width * 2, h);
  pen.fillStyle = '#8d2b22';
  for (let x = -l.width; x < l.width; x += 44) {
    for (const edge of [-1, 1]) {
      polygon(pen, [
        [x, edge * h * 0.5],
        [x + 22, edge * h * 0.5],
        [x + 30, edge * h * 0.34],
        [x + 8, edge * h * 0.34],
      ]);
      pen.fill();
    }
  }
  if (words) {
    pen.fillStyle = '#3a0f0b';
    pen.font = font(Math.max(15, Math.min(22, l.width / 34)), 750);
    pen.textAlign = 'center';
    pen.textBaseline = 'middle';
    pen.fillText('bench stopped and isolated', 0, 1);
  }
  pen.restore();
}
