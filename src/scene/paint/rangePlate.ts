import type { RangeA } from '../../bench/action.ts';
import { font, INK, PAPER } from '../materials.ts';
import { linear, type Pen, polygon, roundRect, shadowed } from '../pen.ts';

export function paintRangePlate(pen: Pen, w: number, h: number, range: RangeA, pressed: boolean): void {
  const lift = pressed ? 0 : 3;
  shadowed(pen, pressed ? 0 : 5, 0, pressed ? 0 : 3, 'rgba(0,0,0,.6)', () => {
    roundRect(pen, 2, 3 - lift + 2, w - 4, h - 7, 5);
    pen.fillStyle = linear(
      pen,
      0,
      0,
      0,
      h,
      pressed
        ? [
            [0, '#cbbf9f'],
            [1, PAPER],
          ]
        : [
            [0, '#43565d'],
            [1, '#243339'],
          ],
    );
    pen.fill();
  });
  pen.strokeStyle = pressed ? '#0e1719' : '#5b757c';
  pen.lineWidth = 1.2;
  pen.stroke();
  const size = Math.max(10, Math.min(17, w / 4.4, h * 0.44));
  pen.font = font(size, 700);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillStyle = pressed ? INK : '#cfe0de';
  const y = h / 2 + 1 - lift / 2;
  pen.fillText(`${range} A`, w / 2 + (pressed ? size * 0.32 : 0), y);
  if (!pressed) return;
  const t = size * 0.3;
  polygon(pen, [
    [4.5, y - t],
    [4.5 + t * 1.3, y],
    [4.5, y + t],
  ]);
  pen.fill();
}
