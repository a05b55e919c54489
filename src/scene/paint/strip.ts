import { linear, type Pen, roundRect, shadowed } from '../pen.ts';

export function paintStrip(pen: Pen, length: number, h: number, grip: number): void {
  const y = h / 2;
  shadowed(pen, 5, 0, 3, 'rgba(0,0,0,.5)', () => {
    pen.fillStyle = linear(pen, 0, y - 7, 0, y + 7, [
      [0, '#87949a'],
      [0.3, '#f3f8f8'],
      [0.55, '#b6c2c5'],
      [1, '#66747a'],
    ]);
    pen.fillRect(6 + grip - 6, y - 7, length - grip + 4, 14);
  });
  shadowed(pen, 5, 0, 3, 'rgba(0,0,0,.5)', () => {
    roundRect(pen, 6, y - 11, grip, 22, 8);
    pen.fillStyle = linear(pen, 0, y - 11, 0, y + 11, [
      [0, '#8a5a30'],
      [0.35, '#cf9a62'],
      [1, '#4f2f16'],
    ]);
    pen.fill();
  });
  pen.fillStyle = 'rgba(40,20,6,.5)';
  for (let i = 0; i < 3; i++) pen.fillRect(6 + grip * (0.24 + i * 0.22), y - 10, 2, 20);
}
