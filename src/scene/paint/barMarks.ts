import { CHALK, font } from '../materials.ts';
import { grain, type Pen } from '../pen.ts';

export function paintNumber(pen: Pen, text: string): void {
  pen.font = font(13, 750);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.lineWidth = 3;
  pen.strokeStyle = 'rgba(40,16,4,.75)';
  pen.strokeText(text, 12, 8.5);
  pen.fillStyle = '#fff6e6';
  pen.fillText(text, 12, 8.5);
}

/** A stroke of chalk: dry at the edges. */
export function paintChalk(pen: Pen, w: number, h: number): void {
  pen.strokeStyle = CHALK;
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  pen.lineWidth = Math.max(3, Math.min(w, h) * 0.2);
  pen.globalAlpha = 0.92;
  pen.beginPath();
  pen.moveTo(w * 0.16, h * 0.72);
  pen.lineTo(w * 0.4, h * 0.3);
  pen.lineTo(w * 0.58, h * 0.7);
  pen.lineTo(w * 0.84, h * 0.28);
  pen.stroke();
  pen.globalCompositeOperation = 'destination-out';
  for (let i = 0; i < 60; i++) {
    pen.globalAlpha = 0.5;
    pen.fillRect(grain(i) * w, grain(i + 60) * h, 1.2, 1);
  }
}
