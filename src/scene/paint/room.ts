import type { Layout, Rect } from '../layout.ts';
import { APRON, BENCH, BRASS, font, WALL } from '../materials.ts';
import { disc, grain, linear, type Pen, polygon, radial, roundRect, shadowed } from '../surface.ts';

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

/** A low window with the last of the daylight in it. */
function paintWindow(pen: Pen, l: Layout): void {
  const h = l.benchTop - 8;
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
  const y = rail.y + rail.h * 0.16;
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

/** What a press on the mat would do, written on it. */
export function paintMatWord(pen: Pen, l: Layout, inCradle: boolean): void {
  const m = l.mat;
  const small = l.mode === 'narrow';
  if (!inCradle && !small) return;
  const lines = small
    ? inCradle
      ? ['lift out', 'to the mat']
      : ['lay in', 'the cradle']
    : ['mat', 'press to lift the armature out'];
  pen.font = font(small ? 11.5 : 12.5, 600);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillStyle = small ? '#cfe0dd' : 'rgba(210,228,224,.7)';
  lines.forEach((line, i) => {
    pen.fillText(line, m.x + m.w / 2, m.y + m.h / 2 + (i - 0.5) * (small ? 14 : 18), m.w - 20);
  });
}

/** The round of the end view: a well of dark behind the part, framed in enamel. */
function paintEndFrame(pen: Pen, l: Layout): void {
  const b = l.endBox;
  shadowed(pen, 16, 0, 6, 'rgba(0,0,0,.6)', () => {
    roundRect(pen, b.x, b.y, b.w, b.h, 18);
    pen.fillStyle = '#0b2226';
    pen.fill();
  });
  pen.save();
  roundRect(pen, b.x, b.y, b.w, b.h, 18);
  pen.clip();
  pen.fillStyle = radial(pen, l.end.x, l.end.y - l.end.core * 0.2, l.end.core * 0.3, b.w * 0.75, [
    [0, '#2a6a68'],
    [0.6, '#124146'],
    [1, '#081f24'],
  ]);
  pen.fillRect(b.x, b.y, b.w, b.h);
  pen.restore();
  roundRect(pen, b.x + 1.5, b.y + 1.5, b.w - 3, b.h - 3, 17);
  pen.strokeStyle = '#3f6a6b';
  pen.lineWidth = 3;
  pen.stroke();
  roundRect(pen, b.x + 3.5, b.y + 3.5, b.w - 7, b.h - 7, 15);
  pen.strokeStyle = 'rgba(0,0,0,.45)';
  pen.lineWidth = 1;
  pen.stroke();
}

/** Words of the end view, cut into the jaws and written over the part. */
export function paintEndLabels(pen: Pen, l: Layout): void {
  const b = l.endBox;
  const size = Math.max(11, Math.min(14, b.w / 24));
  pen.font = font(size, 650);
  pen.textAlign = 'center';
  pen.textBaseline = 'alphabetic';
  if (l.mode === 'narrow') return;
  pen.fillStyle = 'rgba(214,236,229,.9)';
  pen.fillText('from the commutator end', b.x + b.w / 2, b.y + 21);
}

/** Which jaw is which, cut into the iron. */
export function paintJawWords(pen: Pen, l: Layout): void {
  const size = Math.max(11, Math.min(14, l.endBox.w / 24));
  const s = l.end.pxPerM / 1000;
  const y = l.endBox.y + l.endBox.h - 14;
  pen.font = font(size, 700);
  pen.textAlign = 'center';
  pen.textBaseline = 'alphabetic';
  for (const [word, x] of [
    ['near', -32],
    ['far', 32],
  ] as const) {
    pen.fillStyle = 'rgba(255,255,255,.35)';
    pen.fillText(word, l.end.x + x * s, y + 1);
    pen.fillStyle = '#16232a';
    pen.fillText(word, l.end.x + x * s, y);
  }
}

/** Two wooden blocks on the mat, in which the armature lies while it is out of the cradle. */
export function paintBlocks(pen: Pen, l: Layout, words: boolean): void {
  const { x, y, core } = l.end;
  const foot = l.endBox.y + l.endBox.h;
  pen.fillStyle = linear(pen, 0, y + core * 1.35, 0, foot, [
    [0, '#2c3b40'],
    [1, '#1d292d'],
  ]);
  pen.fillRect(l.endBox.x, y + core * 1.42, l.endBox.w, foot);
  for (const side of [-1, 1]) {
    const at = (dx: number, dy: number): [number, number] => [x + side * core * dx, y + core * dy];
    shadowed(pen, 12, 0, 5, 'rgba(0,0,0,.55)', () => {
      polygon(pen, [at(0.02, 1.43), at(1.02, 0.43), at(1.3, 0.43), at(1.3, 1.6), at(0.02, 1.6)]);
      pen.fillStyle = linear(pen, x - core, y, x + core, foot, [
        [0, '#b98a58'],
        [0.5, '#8f6438'],
        [1, '#5d3d1f'],
      ]);
      pen.fill();
    });
  }
  for (let i = 0; i < 9; i++) {
    pen.strokeStyle = 'rgba(60,34,12,.25)';
    pen.lineWidth = 1;
    pen.beginPath();
    pen.moveTo(x - core * 1.3, y + core * (1.46 - i * 0.1));
    pen.bezierCurveTo(
      x - core,
      y + core * (1.42 - i * 0.1),
      x - core * 0.8,
      y + core * (1.5 - i * 0.1),
      x - core * (0.1 + i * 0.1),
      y + core * (1.46 - i * 0.1),
    );
    pen.stroke();
  }
  if (!words) return;
  pen.font = font(Math.max(11, Math.min(14, l.endBox.w / 24)), 650);
  pen.textAlign = 'center';
  pen.fillStyle = '#d6ece5';
  pen.fillText('on the mat', x, foot - 14);
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
