import { REACH_CENTRE_DEG, REACH_HALF_DEG } from '../../bench/geometry.ts';
import { disc, type Pen, radial } from '../pen.ts';
import type { EndGeometry } from '../project.ts';

const RAD = Math.PI / 180;

/** Light from above and the near side, fixed in space, with a rim where the core turns away. */
export function paintLight(pen: Pen, g: EndGeometry): void {
  const R = g.core;
  disc(
    pen,
    0,
    0,
    R,
    radial(pen, -R * 0.35, -R * 0.5, R * 0.05, R * 1.5, [
      [0, 'rgba(255,250,236,.30)'],
      [0.35, 'rgba(255,250,236,.06)'],
      [0.6, 'rgba(0,8,12,.12)'],
      [1, 'rgba(0,8,12,.58)'],
    ]),
  );
  pen.lineWidth = 2;
  pen.strokeStyle = 'rgba(0,0,0,.35)';
  pen.beginPath();
  pen.arc(0, 0, g.riser + 1, 0, Math.PI * 2);
  pen.stroke();
}

/** The far side, where no probe gets to, lies in shadow with a hatch that says so without colour. */
export function paintOutOfReach(pen: Pen, g: EndGeometry): void {
  const from = REACH_CENTRE_DEG + REACH_HALF_DEG;
  const to = REACH_CENTRE_DEG - REACH_HALF_DEG + 360;
  const outer = g.riser;
  pen.save();
  pen.beginPath();
  pen.arc(0, 0, outer, (90 - from) * RAD, (90 - to) * RAD, true);
  pen.arc(0, 0, g.commInner, (90 - to) * RAD, (90 - from) * RAD, false);
  pen.closePath();
  pen.fillStyle = 'rgba(4,16,20,.5)';
  pen.fill();
  pen.clip();
  pen.strokeStyle = 'rgba(4,14,18,.5)';
  pen.lineWidth = 2;
  for (let x = -outer; x < outer * 2; x += 8) {
    pen.beginPath();
    pen.moveTo(x, -outer);
    pen.lineTo(x - outer, outer);
    pen.stroke();
  }
  pen.restore();
}
