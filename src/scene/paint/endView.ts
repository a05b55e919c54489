import { LOW_RIVET, RIVET_RADIUS, restHeight } from '../growlerShape.ts';
import type { Layout } from '../layout.ts';
import { font } from '../materials.ts';
import { linear, type Pen, polygon, radial, roundRect, shadowed } from '../pen.ts';

/** What a press on the mat would do, written on it. */
export function paintMatWord(pen: Pen, l: Layout, inCradle: boolean): void {
  const m = l.mat;
  const small = l.mode === 'narrow';
  if (!inCradle && !small) return;
  const long = small
    ? inCradle
      ? ['lift out', 'to the mat']
      : ['lay in', 'the cradle']
    : ['mat', 'press to lift the armature out'];
  // In half a row of a phone's column there is room for what is done, not for where to.
  const lines = m.w < 60 ? long.slice(0, 1) : long;
  pen.font = font(m.w < 60 ? 10 : small ? 11.5 : 12.5, 600);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillStyle = small ? '#cfe0dd' : 'rgba(210,228,224,.7)';
  lines.forEach((line, i) => {
    const down = (i - (lines.length - 1) / 2) * (small ? Math.min(14, m.h * 0.34) : 18);
    pen.fillText(line, m.x + m.w / 2, m.y + m.h / 2 + down, m.w - (small ? 6 : 20));
  });
}

/** The round of the end view: a well of dark behind the part, framed in enamel. */
export function paintEndFrame(pen: Pen, l: Layout): void {
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

/** What the end view is, in its corner: over the armature the strip is held, beside it lie probes. */
export function paintEndLabels(pen: Pen, l: Layout): void {
  const b = l.endBox;
  if (l.mode === 'narrow' || b.w < 210) return;
  const size = b.h >= 230 ? 12 : 10;
  pen.font = font(size, 650);
  pen.textAlign = 'left';
  pen.textBaseline = 'alphabetic';
  pen.fillStyle = 'rgba(214,236,229,.9)';
  ['from the', 'commutator', 'end'].forEach((line, i) => {
    pen.fillText(line, b.x + 12, b.y + 10 + size + (size + 2) * i);
  });
}

/** Which jaw is which, cut into the iron. */
export function paintJawWords(pen: Pen, l: Layout, outerRadiusM: number): void {
  const size = Math.max(11, Math.min(14, l.endBox.w / 24));
  const s = l.end.pxPerM / 1000;
  const apexY = l.end.y + restHeight(outerRadiusM) * s;
  const overRivet = apexY - (LOW_RIVET + RIVET_RADIUS) * s - 5;
  const y = Math.min(l.endBox.y + l.endBox.h - 14, overRivet);
  pen.font = font(size, 700);
  pen.textAlign = 'center';
  pen.textBaseline = 'alphabetic';
  // On a phone clear of the cables, which lie along the edge.
  const apart = l.mode === 'narrow' ? 26 : 32;
  for (const [word, x] of [
    ['near', -apart],
    ['far', apart],
  ] as const) {
    pen.fillStyle = 'rgba(4,14,18,.75)';
    pen.fillText(word, l.end.x + x * s, y + 1);
    pen.fillStyle = '#eef5f4';
    pen.fillText(word, l.end.x + x * s, y);
  }
}

/** Two wooden blocks on the mat, in which the armature lies while it is out of the cradle. */
export function paintBlocks(pen: Pen, l: Layout, words: boolean): void {
  const { x, y, core } = l.end;
  const foot = l.endBox.y + l.endBox.h;
  // On the mat before the blocks stands what lies in them.
  const low = Math.min(1.6, (foot - y - (words ? 27 : 10)) / core);
  const apart = Math.max(0.02, 1.45 - low);
  pen.fillStyle = linear(pen, 0, y + core * 1.35, 0, foot, [
    [0, '#2c3b40'],
    [1, '#1d292d'],
  ]);
  pen.fillRect(l.endBox.x, y + core * (low - 0.18), l.endBox.w, foot);
  for (const side of [-1, 1]) {
    const at = (dx: number, dy: number): [number, number] => [x + side * core * dx, y + core * dy];
    shadowed(pen, 12, 0, 5, 'rgba(0,0,0,.55)', () => {
      polygon(pen, [at(apart, 1.45 - apart), at(1.02, 0.43), at(1.3, 0.43), at(1.3, low), at(apart, low)]);
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
  pen.fillText('on the mat', x, foot - 10);
}
