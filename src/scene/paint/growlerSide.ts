import { FACE_FROM, FACE_TO, FAR_LEG, FOOT, NEAR_LEG, OUTER, SHOULDER_TOP } from '../growlerShape.ts';
import type { GrowlerStage } from '../growlerStage.ts';
import { BRASS, font } from '../materials.ts';
import { disc, grain, linear, type Pen, polygon, radial, roundRect, type Stop } from '../pen.ts';
import { castBase, coilEnd } from './growlerBody.ts';

/** A flat of the iron between two places of the section, drawn along the whole stack with its laminations. */
function flat(
  pen: Pen,
  k: GrowlerStage,
  a: readonly [number, number],
  b: readonly [number, number],
  stops: readonly Stop[],
): void {
  const corners = [k.at(k.left, ...a), k.at(k.right, ...a), k.at(k.right, ...b), k.at(k.left, ...b)];
  pen.save();
  polygon(pen, corners);
  pen.fillStyle = linear(pen, 0, corners[0]![1], 0, corners[2]![1], stops);
  pen.fill();
  pen.clip();
  const [ax, ay] = k.at(0, ...a);
  const [bx, by] = k.at(0, ...b);
  for (let x = k.left, i = 0; x < k.right; x += 2.1, i++) {
    pen.strokeStyle = grain(i) > 0.5 ? 'rgba(226,238,240,.13)' : 'rgba(8,16,20,.30)';
    pen.lineWidth = 0.8;
    pen.beginPath();
    pen.moveTo(x + ax, ay);
    pen.lineTo(x + bx, by);
    pen.stroke();
  }
  pen.restore();
}

function endFace(pen: Pen, k: GrowlerStage, section: typeof NEAR_LEG, dark: boolean): void {
  pen.save();
  pen.beginPath();
  pen.rect(k.left - 200, 0, 4000, k.floor + (dark ? -8 * k.s : 1));
  pen.clip();
  polygon(
    pen,
    section.map(([x, y]) => k.at(k.right, x, y)),
  );
  const [, top] = k.at(k.right, 0, FACE_TO);
  const [, foot] = k.at(k.right, 0, FOOT);
  pen.fillStyle = linear(pen, 0, top, 0, foot, [
    [0, dark ? '#3d4e57' : '#6d808a'],
    [0.4, dark ? '#2d3c44' : '#4b5d66'],
    [1, '#1d2a31'],
  ]);
  pen.fill();
  pen.strokeStyle = 'rgba(214,230,232,.3)';
  pen.lineWidth = 1;
  pen.stroke();
  pen.restore();
}

/** What stands behind the armature: far jaw, the bottom of the V, the winding's ends. */
export function paintGrowlerBack(pen: Pen, k: GrowlerStage): void {
  castBase(pen, k);
  coilEnd(pen, k, 'left');
  flat(
    pen,
    k,
    [FACE_TO + 4.4, FACE_TO - 0.4],
    [FACE_TO, FACE_TO],
    [
      [0, '#9fb0b7'],
      [1, '#c2d0d4'],
    ],
  );
  flat(
    pen,
    k,
    [FACE_TO, FACE_TO],
    [FACE_FROM, FACE_FROM],
    [
      [0, '#8ea0a8'],
      [0.25, '#5c6f79'],
      [1, '#26343c'],
    ],
  );
  flat(
    pen,
    k,
    [FACE_FROM, FACE_FROM],
    [-FACE_FROM, -6],
    [
      [0, '#16222a'],
      [1, '#070c10'],
    ],
  );
  endFace(pen, k, FAR_LEG, true);
  coilEnd(pen, k, 'right');
}

/** What stands before the armature: the near jaw, its outer flat with the maker's plate left blank but for the bench. */
export function paintGrowlerFront(pen: Pen, k: GrowlerStage, plate: string): void {
  endFace(pen, k, NEAR_LEG, false);
  flat(
    pen,
    k,
    [-FACE_TO, FACE_TO],
    [-38.5, FACE_TO - 0.4],
    [
      [0, '#b9c7cc'],
      [1, '#dfe8ea'],
    ],
  );
  flat(
    pen,
    k,
    [-38.5, FACE_TO - 0.4],
    [-OUTER, SHOULDER_TOP],
    [
      [0, '#c9d5d9'],
      [1, '#7f929b'],
    ],
  );
  flat(
    pen,
    k,
    [-OUTER, SHOULDER_TOP],
    [-OUTER, k.foot],
    [
      [0, '#6f838d'],
      [0.3, '#54666f'],
      [0.8, '#36464f'],
      [1, '#25333b'],
    ],
  );
  bolts(pen, k);
  benchPlate(pen, k, plate);
}

function bolts(pen: Pen, k: GrowlerStage): void {
  const r = 3 * k.s;
  for (const share of [0.08, 0.92]) {
    for (const y of [k.foot + 0.72 * (SHOULDER_TOP - k.foot)]) {
      const [x, cy] = k.at(k.left + (k.right - k.left) * share, -OUTER, y);
      disc(pen, x, cy + r * 0.25, r * 1.12, 'rgba(4,10,14,.6)');
      disc(
        pen,
        x,
        cy,
        r,
        radial(pen, x - r * 0.3, cy - r * 0.4, 0, r * 1.1, [
          [0, '#e4ecee'],
          [0.55, '#8a9ca5'],
          [1, '#475862'],
        ]),
      );
      pen.strokeStyle = 'rgba(20,30,36,.8)';
      pen.lineWidth = r * 0.24;
      pen.beginPath();
      pen.moveTo(x - r * 0.55, cy + r * 0.3);
      pen.lineTo(x + r * 0.55, cy - r * 0.3);
      pen.stroke();
    }
  }
}

function benchPlate(pen: Pen, k: GrowlerStage, text: string): void {
  if (text === '') return;
  const [cx, cy] = k.at((k.left + k.right) / 2, -OUTER, k.foot + 0.3 * (SHOULDER_TOP - k.foot));
  const w = (k.right - k.left) * 0.56;
  const h = 10.5 * k.s;
  roundRect(pen, cx - w / 2, cy - h / 2, w, h, 3);
  pen.fillStyle = linear(pen, 0, cy - h / 2, 0, cy + h / 2, [
    [0, BRASS.light],
    [0.5, BRASS.mid],
    [1, BRASS.dark],
  ]);
  pen.fill();
  pen.strokeStyle = 'rgba(40,26,6,.7)';
  pen.lineWidth = 1;
  pen.stroke();
  pen.fillStyle = '#33240a';
  pen.font = font(Math.max(7, Math.min(h * 0.4, 13)), 700);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillText(text, cx, cy + 0.5, w - 10);
}
