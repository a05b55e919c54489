/**
 * What still pictures are painted with: a canvas of the page, or one of the worker that paints beside it, which has all
 * of this as well.
 */
export type Pen = CanvasRenderingContext2D;

/** The same painting with or without its words: pictures compared by a test leave them out, for letters differ. */
export function lettered(lettering: boolean, draw: (pen: Pen) => void): (pen: Pen) => void {
  if (lettering) return draw;
  return (pen) => {
    pen.fillText = () => {};
    pen.strokeText = () => {};
    draw(pen);
  };
}

export type Stop = readonly [at: number, colour: string];

export function linear(pen: Pen, x0: number, y0: number, x1: number, y1: number, stops: readonly Stop[]) {
  const gradient = pen.createLinearGradient(x0, y0, x1, y1);
  for (const [at, colour] of stops) gradient.addColorStop(at, colour);
  return gradient;
}

export function radial(pen: Pen, x: number, y: number, r0: number, r1: number, stops: readonly Stop[]) {
  const gradient = pen.createRadialGradient(x, y, r0, x, y, r1);
  for (const [at, colour] of stops) gradient.addColorStop(at, colour);
  return gradient;
}

export function roundRect(pen: Pen, x: number, y: number, w: number, h: number, r: number): void {
  pen.beginPath();
  pen.roundRect(x, y, w, h, Math.max(0, Math.min(r, w / 2, h / 2)));
}

export function disc(pen: Pen, x: number, y: number, r: number, fill: string | CanvasGradient): void {
  pen.beginPath();
  pen.arc(x, y, Math.max(0, r), 0, Math.PI * 2);
  pen.fillStyle = fill;
  pen.fill();
}

export function polygon(pen: Pen, points: readonly (readonly [number, number])[]): void {
  pen.beginPath();
  points.forEach(([x, y], i) => {
    if (i === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  });
  pen.closePath();
}

/** Soft shadow for what is drawn inside `draw`. */
export function shadowed(
  pen: Pen,
  blur: number,
  dx: number,
  dy: number,
  colour: string,
  draw: () => void,
): void {
  pen.save();
  pen.shadowBlur = blur;
  pen.shadowOffsetX = dx;
  pen.shadowOffsetY = dy;
  pen.shadowColor = colour;
  draw();
  pen.restore();
}

/** Even, repeatable grain 0..1 for brushed metal and bench top: no chance involved, so pictures repeat. */
export function grain(i: number): number {
  const wave = Math.sin(i * 12.9898 + 4.1414) * 43758.5453;
  return wave - Math.floor(wave);
}
